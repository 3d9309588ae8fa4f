package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.Proportion.Interval;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * The first four rows: R. G. Newcombe, Statistics in Medicine 17 (1998) 857–872, Table I (published
 * to 4 decimals, from memory; the further decimals, and the other rows, by SciPy and by R's
 * binom.test and prop.test, which agree). Tolerance: half a unit of the last decimal given here.
 */
class ProportionTests {
  private static final double SIX = 0.5e-6 + 1e-12;
  private static final double FOUR = 0.5e-4 + 1e-12;

  @Nested
  class Wilson {
    @ParameterizedTest
    @CsvSource({
      "81, 263, .255289, .366210",
      "15, 148, .062386, .160487",
      "0, 30, 0, .113513",
      "3, 100, .010255, .084519",
      "0, 59, 0, .061129",
      "4, 20, .080658, .416017",
      "682, 925, .707996, .764636"
    })
    void agreesWithPublishedIntervals(int hits, int trials, double lower, double upper) {
      isClose(new Proportion(hits, trials).wilson(0.95), lower, upper, SIX);
    }

    @ParameterizedTest
    @CsvSource({"0, 20, 0, .1611", "1, 29, .0061, .1718"})
    void agreesWithIntervalsPublishedToFourDecimals(
        int hits, int trials, double lower, double upper) {
      isClose(new Proportion(hits, trials).wilson(0.95), lower, upper, FOUR);
    }
  }

  @Nested
  class ClopperPearson {
    @ParameterizedTest
    @CsvSource({
      "81, 263, .252737, .367622",
      "15, 148, .057844, .161650",
      "0, 30, 0, .115703",
      "3, 100, .006230, .085176",
      "0, 59, 0, .060609",
      "4, 20, .057334, .436614",
      "682, 925, .707668, .765407"
    })
    void agreesWithPublishedIntervals(int hits, int trials, double lower, double upper) {
      isClose(new Proportion(hits, trials).clopperPearson(0.95), lower, upper, SIX);
    }

    @ParameterizedTest
    @CsvSource({"0, 20, 0, .1684", "1, 29, .0009, .1776"})
    void agreesWithIntervalsPublishedToFourDecimals(
        int hits, int trials, double lower, double upper) {
      isClose(new Proportion(hits, trials).clopperPearson(0.95), lower, upper, FOUR);
    }

    /** One-sided 95 % upper bounds are two-sided 90 % ones. */
    @ParameterizedTest
    @CsvSource({
      "15, 148, .151768",
      "0, 30, .095034",
      "3, 100, .075711",
      "0, 59, .049508",
      "4, 20, .401028"
    })
    void givesOneSidedBoundsFromNinetyPercent(int hits, int trials, double upper) {
      assertThat(new Proportion(hits, trials).clopperPearson(0.90).upper())
          .isCloseTo(upper, within(SIX));
    }
  }

  @Test
  void mirrorsWhenHitsAndMissesChangePlaces() {
    for (int hits = 0; hits <= 40; hits++) {
      Interval one = new Proportion(hits, 40).clopperPearson(0.95);
      Interval other = new Proportion(40 - hits, 40).clopperPearson(0.95);
      // the Beta quantile is found to 1e-9 by Commons Math's default accuracy
      assertThat(one.lower()).isCloseTo(1 - other.upper(), within(2e-9));
      isClose(
          new Proportion(hits, 40).wilson(0.95),
          1 - new Proportion(40 - hits, 40).wilson(0.95).upper(),
          1 - new Proportion(40 - hits, 40).wilson(0.95).lower(),
          1e-12);
    }
  }

  @Test
  void knowsNothingWithoutTrials() {
    Proportion none = new Proportion(0, 0);

    assertThat(none.share()).isNaN();
    assertThat(none.wilson(0.95)).isEqualTo(new Interval(0, 1));
    assertThat(none.clopperPearson(0.95)).isEqualTo(new Interval(0, 1));
  }

  @Test
  void refusesImpossibleCountsAndConfidences() {
    assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(5, 4));
    assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(-1, 4));
    assertThatIllegalArgumentException().isThrownBy(() -> new Proportion(1, 4).wilson(1));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Proportion(1, 4).clopperPearson(Double.NaN));
  }

  private static void isClose(Interval found, double lower, double upper, double tolerance) {
    assertThat(found.lower()).isCloseTo(lower, within(tolerance));
    assertThat(found.upper()).isCloseTo(upper, within(tolerance));
  }
}
