package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.offset;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class OneWayAnovaTests {
  /** NIST StRD, analysis of variance; the certified values stand in the copied files. */
  @Nested
  class AgainstNistReferenceDatasets {
    /**
     * Numbers near 196 with four decimals: storing one moves it by up to 1.4e-14, against spreads
     * of 0.1, so that squares hold about 1e-13 of themselves; the certified values are printed to 9
     * digits (sums) and 15 digits (F, R², sd). 1e-8 and 1e-12 are allowed.
     */
    @Test
    void findsTheCertifiedTableOfSiRstv() {
      OneWayAnova table = OneWayAnova.of(StrdFile.groups("SiRstv"));

      assertThat(table.between().freedom()).isEqualTo(4);
      assertThat(table.within().freedom()).isEqualTo(20);
      assertThat(table.between().squares()).isCloseTo(5.11462616e-2, relative(1e-8));
      assertThat(table.between().mean()).isCloseTo(1.27865654e-2, relative(1e-8));
      assertThat(table.within().squares()).isCloseTo(2.1663656e-1, relative(1e-8));
      assertThat(table.within().mean()).isCloseTo(1.0831828e-2, relative(1e-8));
      assertThat(table.f()).isCloseTo(1.18046237440255, relative(1e-12));
      assertThat(table.rSquared()).isCloseTo(0.190999039051129, relative(1e-12));
      assertThat(table.sdWithin()).isCloseTo(0.104076068334656, relative(1e-12));
      // SciPy 1.x, f_oneway: p .3494474934, ten digits
      assertThat(table.p()).isCloseTo(0.3494474934, within(1e-9));
    }

    /**
     * Atomic weights near 107.868 with a spread of 1.5e-5: storing one moves it by up to 7e-15,
     * 5e-10 of the spread; 48 of them average that down, F takes it twice. 1e-9 of F is allowed; a
     * one-pass formula would keep no digit at all.
     */
    @Test
    void findsTheCertifiedTableOfAtmWtAg() {
      OneWayAnova table = OneWayAnova.of(StrdFile.groups("AtmWtAg"));

      assertThat(table.between().squares()).isCloseTo(3.638341875e-9, relative(1e-9));
      assertThat(table.within().squares()).isCloseTo(1.04951729166667e-8, relative(1e-9));
      assertThat(table.f()).isCloseTo(15.9467335677930, relative(1e-9));
      assertThat(table.rSquared()).isCloseTo(0.257426544538321, relative(1e-9));
      assertThat(table.sdWithin()).isCloseTo(1.51048314446410e-5, relative(1e-9));
    }
  }

  @Nested
  class VarianceBetween {
    /** By hand: means 1 and 5, n₀ = 2; MS between 16, within 2, so (16 − 2)/2 = 7. */
    @Test
    void isWhatTheGroupsDifferByBeyondTheirOwnSpread() {
      OneWayAnova table = OneWayAnova.of(new double[] {0, 2}, new double[] {4, 6});

      assertThat(table.varianceBetween()).isCloseTo(7, offset(1e-12));
    }

    @Test
    void goesBelowZeroForGroupsMoreAlikeThanChance() {
      assertThat(OneWayAnova.of(new double[] {0, 2}, new double[] {2, 0}).varianceBetween())
          .isCloseTo(-1, offset(1e-12));
    }

    /** By hand: N = 5, Σn² = 13; n₀ = 5 − 13/5 = 2.4. */
    @Test
    void countsUnequalGroupsByTheirEffectiveSize() {
      assertThat(OneWayAnova.of(new double[] {1, 2, 3}, new double[] {4, 6}).meanGroupSize())
          .isCloseTo(2.4, offset(1e-12));
    }
  }

  @Test
  void refusesWhatLeavesNothingToCompare() {
    assertThatIllegalArgumentException().isThrownBy(() -> OneWayAnova.of(new double[] {1, 2}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> OneWayAnova.of(new double[] {1}, new double[] {2}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> OneWayAnova.of(new double[] {1, 2}, new double[0]));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> OneWayAnova.of(new double[] {1, Double.NaN}, new double[] {2, 3}));
  }

  private static Percentage relative(double share) {
    return Percentage.withPercentage(100 * share);
  }
}
