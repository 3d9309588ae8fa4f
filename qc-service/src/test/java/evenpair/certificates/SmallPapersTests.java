package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.ArgumentMatchers.anyString;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.never;
import static org.mockito.Mockito.verify;
import static org.mockito.Mockito.when;

import com.google.zxing.BarcodeFormat;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.ledger.Ledger;
import evenpair.print.TestPrinter;
import evenpair.web.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.IntStream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Every paper printed here is left in {@code target/paper}, to be looked at. */
class SmallPapersTests {
  private static final float POINTS_PER_MM = 72 / 25.4f;

  private final Inspections inspections = mock(Inspections.class);
  private final Ledger ledger = mock(Ledger.class);

  @BeforeEach
  void aSealedRecord() {
    when(ledger.sealOf(anyString(), any())).thenReturn(Optional.of(Paper.seal()));
  }

  private SmallPapers papers(String publicUrl) {
    return new SmallPapers(
        inspections,
        new SealWait(ledger, pause -> {}),
        new PublicAddress(publicUrl),
        TestPrinter.pagesWith(Paper.TEXTS),
        Paper.TEXTS);
  }

  private byte[] label(Inspection inspection, String publicUrl) {
    when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(inspection));
    return papers(publicUrl).label(PassedPair.ID, Locale.ENGLISH).pdf();
  }

  private byte[] slip(Inspection inspection) {
    when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(inspection));
    return papers("").reworkSlip(PassedPair.ID, Locale.ENGLISH).pdf();
  }

  @Nested
  class ALabel {
    @Test
    void isOnePageOfFiftyByThirtyMillimetres() {
      PrintedPage page = PrintedPage.of("label", label(PassedPair.inspection(), ""));

      assertThat(page.pages()).isEqualTo(1);
      // layouts are set in whole points: half a point is the most that rounding takes
      assertThat(page.width()).isCloseTo(50 * POINTS_PER_MM, within(0.5f));
      assertThat(page.height()).isCloseTo(30 * POINTS_PER_MM, within(0.5f));
      assertThat(page.text())
          .contains("Sedge 2", "Tuning: plain", "PASS", "2026-11-25, 07:45 UTC", "SG2-004217");
      assertThat(page.fonts()).isNotEmpty().allMatch(PrintedPage.Font::embedded);
      assertThat(page.rasterImages()).isZero();
    }

    @ParameterizedTest
    @ValueSource(ints = {203, 300, 600})
    void isReadBackByAScanner(int dotsAnInch) {
      byte[] pdf = label(PassedPair.inspection(), "https://quality.saltmarsh.example");

      assertThat(Scanner.scan(pdf, BarcodeFormat.CODE_128, dotsAnInch)).hasValue("SG2-004217");
      assertThat(Scanner.scan(pdf, BarcodeFormat.QR_CODE, dotsAnInch))
          .hasValue("https://quality.saltmarsh.example/check/7K2M9QDX0V4TRB8H3ZJN5");
    }

    @Test
    void holdsTheSerialInItsQrCodeWhereNoPageIsPublicAndNeedsNoSealThen() {
      byte[] pdf = label(PassedPair.inspection(), "");

      assertThat(Scanner.scan(pdf, BarcodeFormat.QR_CODE, 203)).hasValue("SG2-004217");
      verify(ledger, never()).sealOf(anyString(), any());
    }

    @Test
    void carriesASerialThatBarsCannotSpellInItsQrCodeAlone() {
      byte[] pdf = label(serial("左耳-004217"), "");

      assertThat(Scanner.scan(pdf, BarcodeFormat.CODE_128, 300)).isEmpty();
      assertThat(Scanner.scan(pdf, BarcodeFormat.QR_CODE, 203)).hasValue("左耳-004217");
      assertThat(PrintedPage.of("label-chinese", pdf).text()).contains("左耳-004217");
    }

    @Test
    void leavesOutBarsTooFineForAPrinterAndStillHoldsTheLongestSerial() {
      String longest = "SERIAL-NUMBER_OF.64-CHARACTERS-THAT-NOBODY-WOULD-EVER-USE-000001";
      byte[] pdf = label(serial(longest), "");

      assertThat(longest).hasSize(64);
      assertThat(Scanner.scan(pdf, BarcodeFormat.CODE_128, 600)).isEmpty();
      assertThat(Scanner.scan(pdf, BarcodeFormat.QR_CODE, 203)).hasValue(longest);
      assertThat(PrintedPage.of("label-long", pdf).joined()).contains(longest);
    }

    @Test
    void isRefusedWhenThePairFailed() {
      when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(failed(reason("window"))));

      assertThatExceptionOfType(Refusal.class)
          .isThrownBy(() -> papers("").label(PassedPair.ID, Locale.ENGLISH))
          .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(409))
          .withMessageContaining("has no label: its verdict is FAIL. Right earpiece is");
    }

    @Test
    void isRefusedForAnUnknownInspection() {
      assertThatExceptionOfType(Refusal.class)
          .isThrownBy(() -> papers("").label(new UUID(4, 4), Locale.ENGLISH))
          .satisfies(refusal -> assertThat(refusal.status()).isEqualTo(404));
    }
  }

  @Nested
  class AReworkSlip {
    @Test
    void saysWhichPairWhatIsWrongAndWhatToDo() {
      PrintedPage page = PrintedPage.of("slip", slip(failed(reason("window"), match())));

      assertThat(page.pages()).isEqualTo(1);
      assertThat(page.width()).isCloseTo(105 * POINTS_PER_MM, within(0.5f));
      assertThat(page.height()).isCloseTo(148 * POINTS_PER_MM, within(0.5f));
      assertThat(page.text())
          .contains(
              "FAIL",
              "SG2-004217",
              "Sedge 2",
              "plain",
              "SW-2647",
              "bench-1",
              "2026-11-25, 07:45",
              "Right · treble · 8.5 kHz",
              "Left against right · treble · 8.5 kHz",
              "Rework: open this earpiece",
              PassedPair.ID.toString(),
              "Page 1 of 1");
      assertThat(page.joined())
          .contains("Rightearpieceis1.3dBaboveitstreblewindowat8.5kHz(+4.3dB,allowed+3.0dB).");
      assertThat(page.fonts()).isNotEmpty().allMatch(PrintedPage.Font::embedded);
      assertThat(page.rasterImages()).isZero();
    }

    @ParameterizedTest
    @ValueSource(ints = {203, 300})
    void isReadBackByAScanner(int dotsAnInch) {
      byte[] pdf = slip(failed(reason("window")));

      assertThat(Scanner.scan(pdf, BarcodeFormat.CODE_128, dotsAnInch)).hasValue("SG2-004217");
      assertThat(Scanner.scan(pdf, BarcodeFormat.QR_CODE, dotsAnInch)).hasValue("SG2-004217");
    }

    @Test
    void goesOnOnFurtherPagesWithManyReasons() {
      ReasonView[] many =
          IntStream.range(0, 14).mapToObj(i -> reason("window")).toArray(ReasonView[]::new);

      PrintedPage page = PrintedPage.of("slip-many", slip(failed(many)));

      assertThat(page.pages()).isGreaterThan(1);
      assertThat(page.joined().split("aboveitstreblewindow", -1)).hasSize(15);
      assertThat(page.text()).contains("Page 2 of " + page.pages());
    }

    @ParameterizedTest
    @ValueSource(
        strings = {
          "level",
          "balance",
          "window",
          "match",
          "polarity",
          "polarity-band",
          "thd",
          "high-order-distortion",
          "idle-noise",
          "other-tuning",
          "seal"
        })
    void knowsWhatToDoForEveryKindOfFailure(String kind) {
      PrintedPage page = PrintedPage.of("slip-" + kind, slip(failed(reason(kind))));

      assertThat(page.joined()).doesNotContain("Setitapartforanengineer.");
    }

    @Test
    void isRefusedWhenThePairPassed() {
      when(inspections.find(PassedPair.ID)).thenReturn(Optional.of(PassedPair.inspection()));

      assertThatExceptionOfType(Refusal.class)
          .isThrownBy(() -> papers("").reworkSlip(PassedPair.ID, Locale.ENGLISH))
          .satisfies(
              refusal -> {
                assertThat(refusal.status()).isEqualTo(409);
                assertThat(refusal.type()).isEqualTo("not-failed");
              })
          .withMessageContaining("its verdict is PASS");
    }
  }

  private static Inspection serial(String serial) {
    return PassedPair.named(
        "Sedge 2", "Saltmarsh Works", serial, "plain", PassedPair.inspection().regions());
  }

  private static Inspection failed(ReasonView... reasons) {
    return PassedPair.changed(PassedPair.inspection(), "closed", "FAIL", "production", reasons);
  }

  private static ReasonView reason(String kind) {
    return new ReasonView(
        kind,
        "right",
        "treble",
        8413.95,
        4.3,
        3.0,
        List.of(),
        "Right earpiece is 1.3 dB above its treble window at 8.5 kHz (+4.3 dB, allowed +3.0 dB).");
  }

  private static ReasonView match() {
    return new ReasonView(
        "match",
        null,
        "treble",
        8413.95,
        3.9,
        2.8,
        List.of(),
        "Left and right differ by 1.1 dB too much in the treble region at 8.5 kHz: right is 3.9 dB"
            + " louder (allowed 2.8 dB).");
  }
}
