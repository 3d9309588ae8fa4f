package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Pure functions of the browser modules, run where they run: in the browser, from the files that
 * are served.
 */
@BrowserTest
@OnePage
class ScreenModulesTests {
  private Screen screen;

  @BeforeEach
  void open(Screen given) {
    screen = given;
    screen.openOnce("#/batch");
  }

  /**
   * @param call such as {@code m.db(1.25)}, where m is the module
   */
  private Object call(String module, String call) {
    return screen.evaluate(
        "async () => { const m = await import('/js/" + module + "'); return " + call + " }");
  }

  private double number(String module, String call) {
    return ((Number) call(module, call)).doubleValue();
  }

  @Nested
  class Numbers {
    @ParameterizedTest
    @CsvSource({"1.25, 1.3", "-0.04, 0.0", "-3.96, −4.0", "0, 0.0", "null, –", "NaN, –"})
    void decibelsHaveOneDecimalAndARealMinus(String value, String text) {
      assertThat(call("format.js", "m.db(" + value + ")")).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({"4.3, +4.3", "-0.6, −0.6", "0.04, 0.0", "-0.04, 0.0"})
    void deviationsAlwaysCarryTheirSignButForZero(String value, String text) {
      assertThat(call("format.js", "m.signedDb(" + value + ")")).isEqualTo(text);
    }

    @ParameterizedTest
    @CsvSource({
      "85, 85 Hz",
      "999.4, 999 Hz",
      "999.6, 1 kHz",
      "1000, 1 kHz",
      "8500, 8.5 kHz",
      "997.3, 997 Hz",
      "8430, 8.43 kHz"
    })
    void frequenciesReadAsInTheReasons(String hz, String text) {
      assertThat(call("format.js", "m.frequency(" + hz + ").replace('\\u202f', ' ')"))
          .isEqualTo(text);
    }

    /** ISO 3, R80: 10^(n/80) Hz is called by its rounded number. */
    @ParameterizedTest
    @CsvSource({
      "19.9526, 20 Hz",
      "8413.951, 8.5 kHz",
      "5011.872, 5 kHz",
      "12589.254, 12.5 kHz",
      "1188.502, 1.18 kHz",
      "19952.62, 20 kHz"
    })
    void gridPointsReadAsTheirPreferredNumber(String hz, String text) {
      assertThat(call("format.js", "m.frequency(" + hz + ").replace('\\u202f', ' ')"))
          .isEqualTo(text);
    }

    @Test
    void sharesAndSizesCarryTheirUnit() {
      assertThat(call("format.js", "m.percent(0.825).replace('\\u202f', ' ')")).isEqualTo("82.5 %");
      assertThat(call("format.js", "m.size(942044).replace('\\u202f', ' ')")).isEqualTo("942 kB");
    }
  }

  @Nested
  class TextsFromTheTable {
    @Test
    void placeholdersAreFilledAsTheServiceFillsThem() {
      assertThat(
              call(
                  "texts.js",
                  "m.fillIn('{a} {b|+dB} dB at {c|Hz}, {d}', {a: 'x', b: 4.26, c: 85})"))
          .isEqualTo("x +4.3 dB at 85\u202fHz, {d}");
    }

    @Test
    void aMissingKeyShowsItself() {
      assertThat(call("texts.js", "m.t('screen.no.such.key')")).isEqualTo("screen.no.such.key");
    }
  }

  @Nested
  class FrequencyAxis {
    @Test
    void labelsTheUsualTenAndHasLinesBetween() {
      assertThat(call("plot/scales.js", "m.LINED_HZ.map(m.tickLabel).filter(Boolean).join(' ')"))
          .isEqualTo("20 50 100 200 500 1k 2k 5k 10k 20k");
      // 20 … 90 are 8 lines, 100 … 900 and 1k … 9k 9 each, 10k and 20k 2.
      assertThat(number("plot/scales.js", "m.LINED_HZ.length")).isEqualTo(28);
    }

    @ParameterizedTest
    @CsvSource({"1000, 136", "20, 0", "1, 0", "30000, 240", "1014.4, 136", "1014.6, 137"})
    void findsTheGridPointNearestInLogFrequency(double hz, int index) {
      // The grid is 10^(n/80) Hz, n = 104 … 344; between 136 (1000 Hz) and 137 (1029.2 Hz) the
      // border is √(1000·1029.2) = 1014.5 Hz.
      String grid = "[...Array(241)].map((_, i) => 10 ** ((104 + i) / 80))";
      assertThat(number("plot/scales.js", "m.nearestIndex(" + grid + ", " + hz + ")"))
          .isEqualTo(index);
    }
  }

  @Nested
  class LevelAxis {
    /**
     * IEC 60263 gives one decade the length of 25 dB or 50 dB; 600 px over three decades are 200 px
     * a decade, 8 px or 4 px a dB.
     */
    @ParameterizedTest
    @CsvSource({"400, 80, 110, 25, 8", "200, 80, 110, 50, 4"})
    void takesTwentyFiveDecibelsADecadeWhereTheyFitElseFifty(
        int height, int low, int high, int perDecade, double pxPerDb) {
      String fit = "m.fitLevel(600, " + height + ", " + low + ", " + high + ")";
      assertThat(number("plot/scales.js", fit + ".dbPerDecade")).isEqualTo(perDecade);
      // log10(20000/19.95) is 3.0011 decades, hence 0.04 % less than with three.
      assertThat(number("plot/scales.js", fit + ".pxPerDb"))
          .isCloseTo(pxPerDb, within(pxPerDb * 0.001));
    }

    @Test
    void theSpanFollowsFromTheHeightAndHoldsWhatMustBeSeen() {
      assertThat(
              call(
                  "plot/scales.js",
                  "(s => s.low <= 80 && s.high >= 110 && Math.abs((s.high - s.low) * s.pxPerDb - 400) < 1e-9)"
                      + "(m.fitLevel(600, 400, 80, 110))"))
          .isEqualTo(true);
    }

    @Test
    void aSpanOfDecibelsTakesItsHeightByTheSameProportion() {
      // 18 dB at 8 px a dB
      assertThat(number("plot/scales.js", "m.heightFor(600, 18)")).isEqualTo(144);
    }

    @Test
    void linesStandWhereTheirLabelsHaveRoom() {
      assertThat(call("plot/scales.js", "m.levelLines(-7, 7, 12).join(' ')"))
          .isEqualTo("-6 -4 -2 0 2 4 6");
      assertThat(call("plot/scales.js", "m.levelLines(-7, 7, 5).join(' ')")).isEqualTo("-5 0 5");
    }
  }

  @Nested
  class Bands {
    @Test
    void areFilledRunByRunAndNeverAcrossAGap() {
      assertThat(
              call(
                  "plot/scales.js",
                  "JSON.stringify(m.runs([1, null, 2, 3, NaN, 4], [0, 0, 0, 0, 0, 0]))"))
          .isEqualTo("[[0,0],[2,3],[5,5]]");
    }

    @Test
    void gapsStayGapsInDifferencesAndOffsets() {
      assertThat(call("plot/scales.js", "m.less([3, null, 5], [1, 1, null])"))
          .isEqualTo(java.util.Arrays.asList(2, null, null));
      assertThat(call("plot/scales.js", "m.lessOffset([3, null], 0.5)"))
          .isEqualTo(java.util.Arrays.asList(2.5, null));
    }

    @Test
    void extentIsThatOfTheNumbersAndNullWithoutAny() {
      assertThat(call("plot/scales.js", "m.extent([3, null, -1], [NaN, 7])"))
          .isEqualTo(List.of(-1, 7));
      assertThat(call("plot/scales.js", "m.extent([null])")).isNull();
    }
  }

  @Nested
  class Thinning {
    @Test
    void drawsNeverMorePointsThanPixelsAndKeepsThePeak() {
      // 241 points on 100 px: groups of three, hence 81 points; the lone peak at 137 stays.
      String peak = "Array.from({length: 241}, (_, i) => i === 137 ? 20 : 0)";
      assertThat(number("plot/scales.js", "m.thin(" + peak + ", 100).length")).isEqualTo(81);
      assertThat(call("plot/scales.js", "m.thin(" + peak + ", 100).includes(137)")).isEqualTo(true);
      assertThat(number("plot/scales.js", "m.thin(" + peak + ", 600).length")).isEqualTo(241);
    }
  }

  @Nested
  class Addresses {
    @Test
    void surviveTheWayThereAndBack() {
      assertThat(
              call(
                  "router.js",
                  "JSON.stringify(m.parseRoute(m.hashOf('batch', 'SW 2647/a', {tuning: 'plain', limitSet: 3, product: null})))"))
          .isEqualTo(
              "{\"screen\":\"batch\",\"name\":\"SW 2647/a\",\"query\":{\"tuning\":\"plain\",\"limitSet\":\"3\"}}");
      assertThat(call("router.js", "m.parseRoute('').screen")).isEqualTo("bench");
    }
  }

  @Nested
  class Picking {
    @Test
    void takesTheCurveThatPassesNearestWithinReach() {
      String units = "[{s: 1, v: [0]}, {s: 2, v: [1]}, {s: 3, v: [null]}]";
      assertThat(call("batch/clouds.js", "m.nearestCurve(" + units + ", u => u.v, 0, 0.8, 0.7).s"))
          .isEqualTo(2);
      assertThat(call("batch/clouds.js", "m.nearestCurve(" + units + ", u => u.v, 0, 3, 0.7)"))
          .isNull();
    }

    @Test
    void theWorstCheckIsTheOneNearestToItsLimitAndAnUnjudgedOneOnlyIfAlone() {
      String results =
          "[{judged: false, marginDb: null}, {judged: true, marginDb: 0.4}, {judged: true, marginDb: -1.3}]";
      assertThat(number("regions.js", "m.worst(" + results + ").marginDb")).isEqualTo(-1.3);
      assertThat(call("regions.js", "m.worst([{judged: false, marginDb: null}]).judged"))
          .isEqualTo(false);
    }
  }

  @Nested
  class Refusals {
    @Test
    void anAnswerThatIsNoProblemDocumentStillSaysItsStatus() {
      assertThat(call("api.js", "m.documentOf(502, '<html>').title")).isEqualTo("502");
      assertThat(
              call("api.js", "m.documentOf(409, '{\"title\": \"a\", \"detail\": \"b\"}').detail"))
          .isEqualTo("b");
    }

    @Test
    void twoKeysAreNeverTheSame() {
      assertThat(call("api.js", "new Set(Array.from({length: 100}, m.newKey)).size"))
          .isEqualTo(100);
    }
  }
}
