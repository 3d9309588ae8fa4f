package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import evenpair.inspections.Inspections;
import evenpair.ledger.Ledger;
import evenpair.ledger.Ledger.Sealed;
import evenpair.print.PaperSize;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.web.Refusal;
import java.io.IOException;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletRequest;
import org.springframework.mock.web.MockHttpServletResponse;

class PublicCheckTests {
  /** The check character of this number is B: see the ledger's own tests. */
  private static final String CODE = "ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-B";

  private final Inspections inspections = mock(Inspections.class);
  private final Products products = mock(Products.class);
  private final Ledger ledger = mock(Ledger.class);
  private final Certificates certificates =
      new Certificates(
          inspections,
          products,
          new SealWait(ledger, pause -> {}),
          new CheckLink(new PublicAddress("https://quality.saltmarsh.example"), ledger),
          Paper.PRINTER,
          Paper.TEXTS);
  private final PublicCheck check = new PublicCheck(ledger, inspections, certificates, Paper.TEXTS);

  @BeforeEach
  void aSealedRecord() {
    when(products.limitSet(PassedPair.LIMITS))
        .thenReturn(
            new StoredLimitSet(PassedPair.LIMITS, null, new UUID(9, 9), null, Paper.DIGEST, null));
    when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(PassedPair.inspection()));
    when(inspections.curves(any())).thenReturn(Optional.of(PassedPair.curves(PassedPair.REGIONS)));
    when(ledger.sealOf(anyString(), any())).thenReturn(Optional.of(Paper.seal()));
    when(ledger.byCode(CODE)).thenReturn(Optional.of(sealed("inspection-closed")));
  }

  private static Sealed sealed(String kind) {
    return new Sealed(kind, PassedPair.ID, Paper.seal());
  }

  @Test
  void showsEveryNumberThatTheCertificateShows() {
    PublicRecord seen = check.find(CODE, Locale.ENGLISH);
    byte[] pdf = certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH).pdf();

    assertThat(differences(pdf, seen)).isEmpty();
    assertThat(seen.facts())
        .containsEntry("serial", "SG2-004217")
        .containsEntry("verdict", "PASS")
        .containsEntry("date", "2026-11-25, 07:45");
    assertThat(seen.plot().left()).hasSize(241);
  }

  @Test
  void showsNothingThatTheCertificateDoesNot() {
    PublicRecord seen = check.find(CODE, Locale.ENGLISH);
    String onPaper =
        PrintedPage.of(
                "checked",
                certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH).pdf())
            .joined();

    assertThat(seen.facts().values())
        .allSatisfy(fact -> assertThat(onPaper).contains(fact.replaceAll("\\s+", "")));
    assertThat(seen.toString()).doesNotContain(PassedPair.inspection().operatorRef().toString());
  }

  @Test
  void differsFromACertificateWhoseNumberWasChanged() throws IOException {
    byte[] pdf = certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH).pdf();
    byte[] changed = ChangedPdf.of(pdf, "9.75 kHz", "6.75 kHz");

    assertThat(PrintedPage.of("changed", changed).text()).contains("6.75 kHz");
    assertThat(differences(changed, check.find(CODE, Locale.ENGLISH)))
        .containsExactly(
            "treble +0.9 9.75 kHz +2.0 0.9 −0.6 12.5 kHz −2.0 1.4 0.7 9.75 kHz 1.5 0.8");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-C", "ZZZZ", "", "ZZZZ-ZZZZ-ZZZZ-ZZZY-ZZZZ-B", "é"})
  void saysMistypedWithoutLookingAnythingUp(String code) {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> check.find(code, Locale.ENGLISH))
        .satisfies(refusal -> assertThat(refusal.type()).isEqualTo("mistyped-code"))
        .withMessageContaining("mistyped");
    verify(ledger, never()).byCode(anyString());
  }

  @Test
  void doesNotKnowACodeThatNoRecordHas() {
    when(ledger.byCode(CODE)).thenReturn(Optional.empty());

    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> check.find(CODE, Locale.ENGLISH))
        .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(404));
  }

  @Test
  void doesNotKnowCodesOfRecordsThatAreNoInspections() {
    when(ledger.byCode(CODE)).thenReturn(Optional.of(sealed("attempt")));

    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> check.find(CODE, Locale.ENGLISH))
        .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(404));
  }

  @Test
  void showsOfATuningThatFailedNoMoreThanItsRowOnAUnitsCertificate() {
    when(inspections.find(PassedPair.ID))
        .thenReturn(
            Optional.of(
                PassedPair.changed(PassedPair.inspection(), "closed", "FAIL", "production")));

    PublicRecord seen = check.find(CODE, Locale.ENGLISH);

    assertThat(seen.verdict()).isEqualTo("FAIL");
    assertThat(seen.facts()).containsOnlyKeys("serial", "tuning", "verdict", "date", "limitSet");
    assertThat(seen.rows()).isEmpty();
    assertThat(seen.plot()).isNull();
  }

  @Test
  void letsNobodyAskTooOften() {
    PublicCheckController controller =
        new PublicCheckController(
            check,
            ledger,
            Paper.TEXTS,
            new RateLimit(2, Duration.ofSeconds(3), () -> 0),
            new RateLimit(100, Duration.ofSeconds(1), () -> 0));
    MockHttpServletRequest request = new MockHttpServletRequest();
    request.setRemoteAddr("192.0.2.7");
    MockHttpServletResponse response = new MockHttpServletResponse();
    controller.certificate(CODE, Locale.ENGLISH, request, response);
    controller.certificate(CODE, Locale.ENGLISH, request, response);

    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> controller.certificate(CODE, Locale.ENGLISH, request, response))
        .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(429));
    assertThat(response.getHeader("Retry-After")).isEqualTo("4");

    request.setRemoteAddr("192.0.2.8");
    assertThat(controller.certificate(CODE, Locale.ENGLISH, request, response).getBody())
        .isNotNull();
  }

  /**
   * What a careful reader does with page and paper: rows of the page that the paper does not have.
   */
  private static List<String> differences(byte[] pdf, PublicRecord seen) {
    List<String> onPaper =
        PrintedPage.of("compared", pdf).lines().stream()
            .map(line -> line.replaceAll("\\d+k?Hz – \\d+ k?Hz ", ""))
            .toList();
    return seen.rows().stream()
        .map(
            row ->
                List.of("name", "left", "right", "pair").stream()
                    .flatMap(
                        part ->
                            part.equals("name")
                                ? java.util.stream.Stream.of("name")
                                : List.of("Value", "At", "Limit", "Margin", "Note").stream()
                                    .map(field -> part + field))
                    .map(row::get)
                    .filter(text -> text != null && !text.isEmpty())
                    .collect(Collectors.joining(" ")))
        .filter(row -> onPaper.stream().noneMatch(line -> sameNumbers(line, row)))
        .toList();
  }

  private static boolean sameNumbers(String line, String row) {
    String name = row.substring(0, row.indexOf(' '));
    String rest = row.substring(row.indexOf(' ') + 1);
    return line.startsWith(name) && line.endsWith(rest);
  }
}
