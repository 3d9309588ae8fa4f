package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.TuningFilters.Filter;
import evenpair.acoustics.TuningFilters.Kind;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TuningFiltersTests {
  private static final double FS = 48_000;
  private static final Filter PEAK_1K = new Filter(Kind.PEAK, 1000, 6, 1);
  private static final Filter PEAK_8K = new Filter(Kind.PEAK, 8000, -12, 4);
  private static final Filter LOW_SHELF = new Filter(Kind.LOW_SHELF, 105, 5.5, 0.71);
  private static final Filter HIGH_SHELF = new Filter(Kind.HIGH_SHELF, 4000, -4, Math.sqrt(0.5));

  private static TuningFilters tuning(double gainDb, Filter... filters) {
    return new TuningFilters(List.of(filters), gainDb, FS);
  }

  @Nested
  class Gains {
    /**
     * The cookbook's four filters in a row with −2 dB, against the sum of each one's gain at
     * exactly that frequency by scipy.signal.freqz, six decimals; last the power mean over the grid
     * point's band less the gain at its middle, by a mean over 20 001 points in NumPy.
     */
    @ParameterizedTest
    @CsvSource({
      "100, 0.065187, -0.000130, 3.011001, -0.000001, -0.000201",
      "1000, 6.000000, -0.013367, 0.000210, -0.014774, -0.001817",
      "10000, 0.047602, -2.225830, -0.000004, -3.939396, -0.001923"
    })
    void areTheSumOfEveryFiltersAndTheOverallGain(
        double hz,
        double peak1k,
        double peak8k,
        double lowShelf,
        double highShelf,
        double meanLessMiddle) {
      double sum = peak1k + peak8k + lowShelf + highShelf - 2;
      TuningFilters tuning = tuning(-2, PEAK_1K, PEAK_8K, LOW_SHELF, HIGH_SHELF);

      // the six decimals of four terms, and of five; 100, 1000 and 10 000 Hz are grid points
      assertThat(tuning.chain().gainDb(hz)).isCloseTo(sum, within(4e-6));
      assertThat(tuning.gains().at(Grid.nearest(hz))).isCloseTo(sum + meanLessMiddle, within(5e-6));
    }

    @Test
    void withoutFiltersAreTheOverallGain() {
      Curve gains = tuning(-2).gains();

      for (int i = 0; i < Grid.POINTS; i++) {
        // rounding of a few operations on doubles
        assertThat(gains.at(i)).isCloseTo(-2, within(1e-12));
      }
    }

    @Test
    void ofAPeakAreThoseOfTheSignalItFilters() {
      // independent of the chain's own response: a sine at a grid point, in steady state after 0.5
      // s
      int point = Grid.nearest(1000);
      double[] sine = new double[48_000];
      for (int n = 0; n < sine.length; n++) {
        sine[n] = Math.sin(2 * Math.PI * Grid.hz(point) * n / FS);
      }
      double[] filtered = tuning(-2, PEAK_1K).chain().filter(sine);

      double in = 0;
      double out = 0;
      for (int n = 24_000; n < sine.length; n++) {
        in += sine[n] * sine[n];
        out += filtered[n] * filtered[n];
      }

      // 500 whole periods, so that both sums are exact; 6 − 2 dB at the peak's centre
      assertThat(10 * Math.log10(out / in)).isCloseTo(4, within(1e-6));
    }
  }

  @Nested
  class Phases {
    @Test
    void areZeroAtAPeaksCentreAndLeadBelowIt() {
      double[] phase = tuning(0, PEAK_1K).phasesDeg();

      // by symmetry of the bilinear transform exactly 0 at the centre
      assertThat(phase[Grid.nearest(1000)]).isCloseTo(0, within(1e-9));
      assertThat(phase[Grid.nearest(700)]).isPositive();
      assertThat(phase[Grid.nearest(1400)]).isNegative();
    }

    @Test
    void ofABoostAndTheEqualCutCancel() {
      Filter cut = new Filter(Kind.PEAK, 1000, -6, 1);

      assertThat(tuning(0, PEAK_1K, cut).phasesDeg())
          .containsExactly(new double[Grid.POINTS], within(1e-9));
    }
  }

  @Nested
  class WhatCannotBe {
    @Test
    void isRefused() {
      assertRefused(0, FS, new Filter(Kind.PEAK, 1000, 6, 0));
      assertRefused(0, FS, new Filter(Kind.PEAK, 1000, 6, -1));
      assertRefused(0, FS, new Filter(Kind.PEAK, 24_000, 6, 1));
      assertRefused(0, FS, new Filter(Kind.LOW_SHELF, 0, 6, 1));
      assertRefused(0, FS, new Filter(Kind.HIGH_SHELF, 1000, Double.NaN, 1));
      assertRefused(Double.POSITIVE_INFINITY, FS);
    }

    @Test
    void isARateBelowWhichTheGridDoesNotFit() {
      assertRefused(0, 40_000);

      assertThat(new TuningFilters(List.of(), 0, TuningFilters.LOWEST_RATE_HZ).gains().has(240))
          .isTrue();
    }

    private void assertRefused(double gainDb, double rateHz, Filter... filters) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new TuningFilters(List.of(filters), gainDb, rateHz));
    }
  }
}
