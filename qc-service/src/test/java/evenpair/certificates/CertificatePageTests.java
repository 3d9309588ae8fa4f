package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.certificates.CertificateSheet.TuningVerdict;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.inspections.Inspections.RegionView;
import evenpair.print.PageOverflow;
import evenpair.print.PaperSize;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Every page printed here is left in {@code target/paper}, to be looked at. */
class CertificatePageTests {

  @ParameterizedTest
  @EnumSource(PaperSize.class)
  void isOnePageOfItsSizeWithEveryFontEmbeddedAndNoRasterImage(PaperSize size) {
    PrintedPage page = PrintedPage.of("pair-" + size.word(), print(PassedPair.inspection(), size));

    assertThat(page.pages()).isEqualTo(1);
    // sizes in points, as ISO 216 and the letter format give them; whole points are exact in the
    // file
    assertThat(page.width()).isCloseTo(size == PaperSize.A4 ? 595 : 612, within(0.01f));
    assertThat(page.height()).isCloseTo(size == PaperSize.A4 ? 842 : 792, within(0.01f));
    assertThat(page.fonts()).isNotEmpty().allMatch(PrintedPage.Font::embedded);
    assertThat(page.rasterImages()).isZero();
    assertThat(page.textOutsideMargins()).isEmpty();
  }

  @ParameterizedTest
  @EnumSource(PaperSize.class)
  void saysWhatWasMeasuredAndByWhatItWasJudged(PaperSize size) {
    PrintedPage page = PrintedPage.of("pair-" + size.word(), print(PassedPair.inspection(), size));

    assertThat(page.text())
        .contains(
            "Saltmarsh Works",
            "Sedge 2",
            "Tuning: plain",
            "SG2-004217",
            "SW-2647",
            "2026-11-25, 07:45",
            "PASS",
            "bench-1",
            "IEC 60318-4",
            "3, 9f2c41d0a7b3…",
            "Evenpair 0.1.0",
            "7K2M-9QDX-0V4T-RB8H-3ZJN-5",
            PassedPair.ID.toString());
    assertThat(page.text())
        .contains(
            "outside 100 Hz to 10 kHz",
            "compare with the golden response only and do not represent an ear");
    assertThat(page.text())
        .contains("bass", "mid", "treble", "20 Hz – 200 Hz", "+0.3", "−0.1", "right way round");
  }

  @Test
  void labelsThePlotInWords() {
    PrintedPage page = PrintedPage.of("pair-a4", print(PassedPair.inspection(), PaperSize.A4));

    assertThat(page.lines()).contains("20 50 100 200 500 1k 2k 5k 10k 20k Hz");
    assertThat(page.text())
        .contains("left − right", "golden", "window", "dB SPL", "25 dB a decade");
  }

  @Test
  void namesNoOperator() {
    PrintedPage page = PrintedPage.of("pair-a4", print(PassedPair.inspection(), PaperSize.A4));

    assertThat(page.text())
        .doesNotContain(PassedPair.inspection().operatorRef().toString())
        .doesNotContainIgnoringCase("operator");
  }

  @Test
  void isTheSameBytesForTheSameRecordAndDatedByIt() {
    byte[] first = print(PassedPair.inspection(), PaperSize.A4);
    byte[] second = print(PassedPair.inspection(), PaperSize.A4);

    assertThat(java.util.Arrays.equals(first, second)).as("same bytes").isTrue();
    assertThat(PrintedPage.of("pair-a4", first).dated()).isEqualTo(PassedPair.CLOSED);
    assertThat(java.util.Arrays.equals(first, print(PassedPair.inspection(), PaperSize.LETTER)))
        .isFalse();
  }

  @Nested
  class WithAwkwardContent {
    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void shrinksLongNamesInsteadOfCuttingThem(PaperSize size) {
      String product = "Sedge 2 Limited Anniversary Edition with Interchangeable Cable";
      String maker =
          "Saltmarsh Works Electroacoustic Manufacturing Cooperative of the Eastern Marshes";
      String serial = "SG2-".repeat(15) + "0042";
      Inspection long_ =
          PassedPair.named(
              product,
              maker,
              serial,
              "a-tuning-with-quite-a-long-name",
              PassedPair.inspection().regions());

      PrintedPage page = PrintedPage.of("long-names-" + size.word(), print(long_, size));

      assertThat(page.pages()).isEqualTo(1);
      assertThat(page.joined())
          .contains(
              product.replace(" ", ""),
              maker.replace(" ", ""),
              serial,
              "a-tuning-with-quite-a-long-name");
      assertThat(page.textOutsideMargins()).isEmpty();
    }

    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void writesChineseAndJapaneseNamesAsTheyAre(PaperSize size) {
      Inspection inspection =
          PassedPair.named(
              "苇草二号 Sedge 2",
              "盐沼声学 Saltmarsh 株式会社 サウンド",
              "左-004217",
              "暖",
              PassedPair.inspection().regions());
      byte[] pdf = print(inspection, size);

      PrintedPage page = PrintedPage.of("chinese-" + size.word(), pdf);

      assertThat(page.joined())
          .contains("苇草二号Sedge2", "盐沼声学Saltmarsh株式会社サウンド", "左-004217", "Tuning:暖");
      assertThat(page.fonts()).hasSizeGreaterThan(1).allMatch(PrintedPage.Font::embedded);
      // the typeface has 4 MB; the glyphs of this page need a few kilobytes
      assertThat(pdf.length).isLessThan(300_000);
    }

    @Test
    void writesCharactersWithoutAGlyphAsCodePoints() {
      Inspection inspection =
          PassedPair.named(
              "Sedge 2",
              "Saltmarsh Works",
              "한𓀀-004217",
              "plain",
              PassedPair.inspection().regions());

      PrintedPage page = PrintedPage.of("code-points", print(inspection, PaperSize.A4));

      assertThat(page.text()).contains("‹U+D55C›‹U+13000›-004217");
      assertThat(page.fonts()).allMatch(PrintedPage.Font::embedded);
    }

    @Test
    void printsARowForARegionThatWasNotJudged() {
      List<RegionView> views =
          Stream.concat(
                  PassedPair.views(PassedPair.REGIONS.subList(0, 2)).stream(),
                  Stream.of(
                      unjudged("window", "left"),
                      unjudged("window", "right"),
                      unjudged("match", null)))
              .toList();
      Inspection inspection =
          PassedPair.named("Sedge 2", "Saltmarsh Works", "SG2-004217", "plain", views);

      PrintedPage page = PrintedPage.of("not-judged", print(inspection, PaperSize.A4));

      assertThat(page.lines())
          .anyMatch(line -> line.startsWith("treble") && line.split("not judged", -1).length == 4);
      assertThat(page.text()).contains("In every region that was judged");
    }

    private RegionView unjudged(String check, String channel) {
      return new RegionView("treble", check, channel, false, null, null, null, null);
    }
  }

  @Nested
  class WithFurtherChecks {
    private final List<RegionView> views =
        Stream.concat(
                PassedPair.views(PassedPair.REGIONS).stream(),
                Stream.of(
                    in("%", "thd", "100–3000 Hz", "left", 0.58, 850.0, 0.42, 1.0),
                    in("%", "thd", "100–3000 Hz", "right", 0.61, 250.0, 0.39, 1.0),
                    in(
                        "dB",
                        "high-order-distortion",
                        "100–700 Hz",
                        "left",
                        12.3,
                        300.0,
                        -62.3,
                        -50),
                    in(
                        "dB",
                        "high-order-distortion",
                        "100–700 Hz",
                        "right",
                        9.9,
                        310.0,
                        -59.9,
                        -50),
                    in("dB(A)", "idle-noise", null, "left", 3.2, null, 16.8, 20),
                    in("dB(A)", "idle-noise", null, "right", 2.9, null, 17.1, 20)))
            .toList();

    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void printsARowForEachInItsOwnUnit(PaperSize size) {
      Inspection inspection =
          PassedPair.named("Sedge 2", "Saltmarsh Works", "SG2-004217", "warm", views);

      PrintedPage page = PrintedPage.of("further-checks-" + size.word(), print(inspection, size));

      assertThat(page.pages()).isEqualTo(1);
      assertThat(page.lines())
          .anyMatch(
              line ->
                  line.startsWith("THD, %")
                      && line.contains("0.42 850 Hz 1.00 0.58")
                      && line.contains("0.39 250 Hz 1.00 0.61"))
          .anyMatch(
              line -> line.startsWith("High order, dB") && line.contains("−62.3 300 Hz −50.0 12.3"))
          .anyMatch(line -> line.startsWith("Noise, dB(A)") && line.contains("16.8 20.0 3.2"));
      assertThat(page.text()).contains("100–3000 Hz", "100–700 Hz").doesNotContain("conditional");
      assertThat(page.textOutsideMargins()).isEmpty();
    }

    private static RegionView in(
        String unit,
        String check,
        String span,
        String channel,
        double margin,
        Double at,
        double measured,
        double limit) {
      return new RegionView(
          span, check, channel, true, margin, at, measured, limit, "pass", unit, null);
    }
  }

  @Nested
  class OfAConditionalPass {
    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void saysSoAndMarksWhere(PaperSize size) {
      List<RegionView> views =
          PassedPair.views(PassedPair.REGIONS).stream()
              .map(
                  view ->
                      "treble".equals(view.name()) && "right".equals(view.channel())
                          ? new RegionView(
                              view.name(),
                              view.check(),
                              view.channel(),
                              true,
                              0.2,
                              view.atHz(),
                              -1.8,
                              -2.0,
                              "conditional-pass",
                              "dB",
                              0.4)
                          : view)
              .toList();

      PrintedPage page =
          PrintedPage.of(
              "conditional-" + size.word(),
              print(
                  PassedPair.named("Sedge 2", "Saltmarsh Works", "SG2-004217", "plain", views),
                  size));

      assertThat(page.pages()).isEqualTo(1);
      assertThat(page.text())
          .containsPattern("PASS,\\s+conditional")
          .containsPattern("the\\s+pass\\s+is\\s+conditional\\s+there");
      assertThat(page.lines())
          .anyMatch(line -> line.startsWith("treble") && line.contains("−2.0 0.2 *"));
      assertThat(page.textOutsideMargins()).isEmpty();
    }
  }

  @Nested
  class WithManyRegions {
    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void setsTheTableTighterToStayOnOnePage(PaperSize size) {
      List<RegionSpan> regions = regions(16);
      Inspection inspection =
          PassedPair.named(
              "Sedge 2", "Saltmarsh Works", "SG2-004217", "plain", PassedPair.views(regions));

      PrintedPage page =
          PrintedPage.of(
              "many-regions-" + size.word(), Paper.print(inspection, regions, List.of(), size));

      assertThat(page.pages()).isEqualTo(1);
      assertThat(page.text()).contains("band 1", "band 16", "7K2M-9QDX", "20k");
      assertThat(page.textOutsideMargins()).isEmpty();
    }

    @Test
    void saysSoWhenOnePageIsNotEnough() {
      List<RegionSpan> regions = regions(90);
      Inspection inspection =
          PassedPair.named(
              "Sedge 2", "Saltmarsh Works", "SG2-004217", "plain", PassedPair.views(regions));

      assertThatExceptionOfType(PageOverflow.class)
          .isThrownBy(() -> Paper.print(inspection, regions, List.of(), PaperSize.LETTER))
          .satisfies(overflow -> assertThat(overflow.rows()).isEqualTo(92));
    }

    private static List<RegionSpan> regions(int count) {
      double ratio = Math.pow(800, 1.0 / count);
      return IntStream.range(0, count)
          .mapToObj(
              i ->
                  new RegionSpan(
                      "band " + (i + 1), 20 * Math.pow(ratio, i), 20 * Math.pow(ratio, i + 1)))
          .toList();
    }
  }

  @Nested
  class OfAWholeUnit {
    @ParameterizedTest
    @EnumSource(PaperSize.class)
    void listsTheVerdictOfEveryTuning(PaperSize size) {
      List<TuningVerdict> tunings =
          Stream.of("plain", "level", "warm", "lively")
              .map(
                  tuning ->
                      new TuningVerdict(
                          PassedPair.closed(new UUID(3, tuning.hashCode()), tuning, "PASS", "PASS"),
                          Paper.seal()))
              .toList();

      PrintedPage page =
          PrintedPage.of(
              "unit-" + size.word(),
              Paper.print(PassedPair.inspection(), PassedPair.REGIONS, tunings, size));

      assertThat(page.pages()).isEqualTo(1);
      assertThat(page.lines())
          .contains("lively PASS 2026-11-25, 07:45 3 7K2M-9QDX-0V4T-RB8H-3ZJN-5");
      assertThat(page.textOutsideMargins()).isEmpty();
    }
  }

  private static byte[] print(Inspection inspection, PaperSize size) {
    return Paper.print(inspection, PassedPair.REGIONS, List.of(), size);
  }
}
