package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.times;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import evenpair.acoustics.EarSimulator;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.ledger.Ledger;
import evenpair.print.PaperSize;
import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.Products.Tuning;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class CertificatesTests {
  private static final UUID WARM = new UUID(5, 5);

  private final Inspections inspections = mock(Inspections.class);
  private final Products products = mock(Products.class);
  private final Ledger ledger = mock(Ledger.class);
  private final List<Object> pauses = new ArrayList<>();
  private final Certificates certificates =
      new Certificates(
          inspections,
          products,
          new SealWait(ledger, pauses::add),
          new CheckLink(new PublicAddress(""), new SigningLedger()),
          Paper.PRINTER,
          Paper.TEXTS);

  @BeforeEach
  void aProductWithTwoRequiredTunings() {
    when(products.find("sedge-2"))
        .thenReturn(
            Optional.of(
                new Product(
                    "sedge-2",
                    "Sedge 2",
                    "Saltmarsh Works",
                    "SG2-\\d{6}",
                    EarSimulator.IEC_60318_4,
                    List.of(
                        new Tuning("plain", true),
                        new Tuning("warm", true),
                        new Tuning("lively", false)))));
    when(products.limitSet(PassedPair.LIMITS))
        .thenReturn(
            new StoredLimitSet(PassedPair.LIMITS, null, new UUID(9, 9), null, Paper.DIGEST, null));
    when(inspections.curves(any())).thenReturn(Optional.of(PassedPair.curves(PassedPair.REGIONS)));
    when(ledger.sealOf(anyString(), any())).thenReturn(Optional.of(Paper.seal()));
  }

  @Nested
  class OfAnInspection {
    @Test
    void isPrintedWhenItPassed() {
      when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(PassedPair.inspection()));

      Certificates.Page page =
          certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH);

      assertThat(page.fileName()).isEqualTo("certificate-SG2-004217-plain.pdf");
      assertThat(PrintedPage.of("service", page.pdf()).text())
          .contains("7K2M-9QDX", "9f2c41d0a7b3");
      verify(ledger).sealOf("inspection-closed", PassedPair.ID);
    }

    @Test
    void isRefusedForAnUnknownInspection() {
      when(inspections.find(any())).thenReturn(Optional.empty());

      refuses(
          404,
          () -> certificates.ofInspection(WARM, PaperSize.A4, Locale.ENGLISH),
          WARM.toString());
    }

    @Test
    void isRefusedWithTheReasonWhenItFailed() {
      Inspection failed =
          PassedPair.changed(
              PassedPair.inspection(),
              "closed",
              "FAIL",
              "production",
              new ReasonView(
                  "window",
                  "right",
                  "treble",
                  8413.95,
                  4.3,
                  3.0,
                  List.of(),
                  "Right earpiece is 1.3 dB above its treble window."));
      when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(failed));

      Refusal refusal =
          refuses(
              409,
              () -> certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH),
              "its verdict is FAIL. Right earpiece is 1.3 dB above its treble window.");
      assertThat(refusal.members()).containsEntry("verdict", "FAIL");
    }

    @Test
    void isRefusedWhileItIsOpen() {
      when(inspections.find(PassedPair.ID))
          .thenReturn(
              Optional.of(PassedPair.changed(PassedPair.inspection(), "open", null, "production")));

      refuses(
          409,
          () -> certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH),
          "it is open, its last attempt was PASS");
    }
  }

  @Nested
  class OfAUnit {
    @Test
    void showsTheFirstRequiredTuningAndListsAll() {
      when(inspections.ofUnit("SG2-004217"))
          .thenReturn(
              List.of(
                  PassedPair.closed(WARM, "warm", "PASS", "PASS"),
                  PassedPair.closed(PassedPair.ID, "plain", "PASS", "PASS")));

      PrintedPage page =
          PrintedPage.of(
              "service-unit",
              certificates.ofUnit("SG2-004217", PaperSize.LETTER, Locale.ENGLISH).pdf());

      assertThat(page.text()).contains("Tuning: plain", PassedPair.ID.toString());
      assertThat(
              page.lines().stream()
                  .filter(line -> line.matches("(plain|warm) PASS 2026.*"))
                  .toList())
          .hasSize(2);
    }

    @Test
    void isRefusedForAnUnknownSerial() {
      when(inspections.ofUnit("SG2-9")).thenReturn(List.of());

      refuses(404, () -> certificates.ofUnit("SG2-9", PaperSize.A4, Locale.ENGLISH), "SG2-9");
    }

    @Test
    void isRefusedNamingTuningsThatFailedOrAreMissing() {
      when(inspections.ofUnit("SG2-004217"))
          .thenReturn(List.of(PassedPair.closed(PassedPair.ID, "plain", "FAIL", "FAIL")));

      Refusal refusal =
          refuses(
              409,
              () -> certificates.ofUnit("SG2-004217", PaperSize.A4, Locale.ENGLISH),
              "failed in plain; not yet judged in warm");
      assertThat(refusal.members())
          .containsEntry("missing", List.of("warm"))
          .containsEntry("failed", List.of("plain"));
    }

    @Test
    void takesOnlyTheCurrentOccasion() {
      Inspection plain = PassedPair.closed(PassedPair.ID, "plain", "PASS", "INCOMPLETE");
      Inspection reworked =
          PassedPair.changed(
              PassedPair.closed(WARM, "warm", "PASS", "INCOMPLETE"), "closed", "PASS", "rework");
      when(inspections.ofUnit("SG2-004217")).thenReturn(List.of(plain, reworked));

      refuses(
          409,
          () -> certificates.ofUnit("SG2-004217", PaperSize.A4, Locale.ENGLISH),
          "not yet judged in plain");
    }
  }

  @Nested
  class WaitingForTheSeal {
    @BeforeEach
    void aPassedInspection() {
      when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(PassedPair.inspection()));
    }

    @Test
    void looksAgainUntilABlockHoldsTheRecord() {
      when(ledger.sealOf(anyString(), any()))
          .thenReturn(Optional.empty(), Optional.empty(), Optional.of(Paper.seal()));

      assertThat(certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH).pdf())
          .isNotEmpty();
      assertThat(pauses).hasSize(2);
    }

    @Test
    void givesUpAfterSomeSeconds() {
      when(ledger.sealOf(anyString(), any())).thenReturn(Optional.empty());

      assertThatExceptionOfType(NotYetSealed.class)
          .isThrownBy(() -> certificates.ofInspection(PassedPair.ID, PaperSize.A4, Locale.ENGLISH));
      verify(ledger, times(50)).sealOf(anyString(), any());
    }
  }

  private static Refusal refuses(int status, Runnable call, String detail) {
    Refusal[] thrown = new Refusal[1];
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(call::run)
        .withMessageContaining(detail)
        .satisfies(
            refusal -> {
              assertThat(refusal.status()).isEqualTo(status);
              thrown[0] = refusal;
            });
    return thrown[0];
  }
}
