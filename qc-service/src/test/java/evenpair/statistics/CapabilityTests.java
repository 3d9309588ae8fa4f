package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CapabilityTests {
  private static final double SIX = 0.5e-6 + 1e-9;

  /** NIST/SEMATECH e-Handbook 6.1.6 (from memory, calculated): exact fractions. */
  @Test
  void followsItsDefinitions() {
    Capability found = new Capability(SpecifiedLimits.between(8, 20), 16, 2, 50, 49);

    assertThat(found.spread().orElseThrow().value()).isCloseTo(1.0, within(1e-12));
    assertThat(found.above().orElseThrow().value()).isCloseTo(2.0 / 3, within(1e-12));
    assertThat(found.below().orElseThrow().value()).isCloseTo(4.0 / 3, within(1e-12));
    assertThat(found.nearest().value()).isCloseTo(2.0 / 3, within(1e-12));
    assertThat(found.aboutTarget(14).orElseThrow()).isCloseTo(0.70710678, within(0.5e-8));
  }

  /**
   * As R's package qcc prints them for the piston rings (two decimals), the further digits
   * calculated with the exact d₂.
   */
  @Test
  void agreesWithThePublishedPistonRings() {
    double[] rings = Arrays.copyOf(Measured.pistonRings(), 125);
    SpecifiedLimits limits = SpecifiedLimits.between(73.95, 74.05);
    Description all = Description.of(rings);
    double spread = 0.02276 / ChartConstants.of(5).d2();
    Capability within5 = new Capability(limits, all.mean(), spread, 125, 124);
    Capability whole = new Capability(limits, all.mean(), all.sd(), 125, 124);

    // Simpson's d₂ is within 1e-7; six decimals are given
    assertThat(within5.spread().orElseThrow().value()).isCloseTo(1.703229, within(1e-6));
    assertThat(within5.nearest().value()).isCloseTo(1.663169, within(1e-6));
    assertThat(within5.aboutTarget(74).orElseThrow()).isCloseTo(1.691060, within(1e-6));
    assertThat(whole.spread().orElseThrow().value()).isCloseTo(1.655086, within(SIX));
    assertThat(whole.nearest().value()).isCloseTo(1.616159, within(SIX));
    Bounds cp = within5.spread().orElseThrow().interval(0.95);
    assertThat(cp.lower()).isCloseTo(1.49, within(0.0051));
    assertThat(cp.upper()).isCloseTo(1.91, within(0.0051));
    Bounds cpk = within5.nearest().interval(0.95);
    assertThat(cpk.lower()).isCloseTo(1.45, within(0.0051));
    assertThat(cpk.upper()).isCloseTo(1.88, within(0.0051));
  }

  /** Calculated with SciPy from the formulas of Dataplot's help text and Bissell 1990. */
  @ParameterizedTest
  @CsvSource({
    "50, 1.00, .802482, 1.197126, .832139",
    "30, 1.33, .989351, 1.670001, 1.039302",
    "100, 1.67, 1.437579, 1.902035, 1.473245",
    "50, 1.50, 1.203723, 1.795689, 1.248208"
  })
  void boundsTheIndexOfTheSpread(int n, double cp, double lower, double upper, double least) {
    CapabilityIndex index = new CapabilityIndex(cp, true, n, n - 1);

    assertThat(index.interval(0.95).lower()).isCloseTo(lower, within(SIX));
    assertThat(index.interval(0.95).upper()).isCloseTo(upper, within(SIX));
    assertThat(index.atLeast(0.95)).isCloseTo(least, within(SIX));
  }

  /** Sources as above; .666667 stands for 2/3. */
  @ParameterizedTest
  @CsvSource({
    "50, .6666666667, .505551, .827782, .531454",
    "30, 1.33, .967529, 1.692471, 1.025804",
    "100, 1.50, 1.281091, 1.718909, 1.316286",
    "50, 1.20, .945083, 1.454917, .986067"
  })
  void boundsTheIndexOfTheDistance(int n, double cpk, double lower, double upper, double least) {
    CapabilityIndex index = new CapabilityIndex(cpk, false, n, n - 1);

    assertThat(index.interval(0.95).lower()).isCloseTo(lower, within(SIX));
    assertThat(index.interval(0.95).upper()).isCloseTo(upper, within(SIX));
    assertThat(index.atLeast(0.95)).isCloseTo(least, within(SIX));
  }

  @Test
  void hasOneSideWhereThereIsOneLimit() {
    Capability found = new Capability(SpecifiedLimits.atLeast(0), 3, 1, 30, 29);

    assertThat(found.spread()).isEmpty();
    assertThat(found.above()).isEmpty();
    assertThat(found.nearest().value()).isCloseTo(1, within(1e-12));
    assertThat(found.aboutTarget(3)).isEmpty();
  }

  @Test
  void refusesASampleWithoutSpread() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new Capability(SpecifiedLimits.atLeast(0), 3, 0, 30, 29));
  }

  @Nested
  class ByPercentiles {
    /**
     * Weibull distribution of shape 1.5 and scale 1, its own percentiles; calculated with SciPy.
     */
    @Test
    void agreesWithAKnownDistribution() {
      PercentileCapability weibull =
          new PercentileCapability(0.0122203803, 0.7832197688, 3.5212596536);
      SpecifiedLimits limits = SpecifiedLimits.between(0, 4);

      assertThat(weibull.spread(limits).orElseThrow()).isCloseTo(1.139913, within(SIX));
      assertThat(weibull.above(limits).orElseThrow()).isCloseTo(1.174848, within(SIX));
      assertThat(weibull.below(limits).orElseThrow()).isCloseTo(1.015850, within(SIX));
      assertThat(weibull.nearest(limits)).isCloseTo(1.015850, within(SIX));
      assertThat(weibull.nearest(SpecifiedLimits.atMost(4))).isCloseTo(1.174848, within(SIX));
    }

    @Test
    void takesManyUnits() {
      assertThat(PercentileCapability.of(new double[740]))
          .isEqualTo(new NotEnough<>(Lack.UNITS, 740, 741));
      assertThat(PercentileCapability.of(new double[741]))
          .isEqualTo(new NotEnough<>(Lack.SPREAD, 1, 3));
    }

    /**
     * Exponential values: X₀.₁₃₅ = −ln 0.99865, X₅₀ = ln 2, X₉₉.₈₆₅ = −ln 0.00135 = 6.6077. The
     * standard error of that percentile of 100,000 is √(p/(1−p)/n)·1 = 0.086; four of them.
     */
    @Test
    void findsThePercentilesOfALargeSample() {
      double[] values = new Random(1).doubles(100_000).map(u -> -Math.log1p(-u)).toArray();

      PercentileCapability found = PercentileCapability.of(values).told().orElseThrow();

      assertThat(found.high()).isCloseTo(-Math.log(0.00135), within(4 * 0.086));
      assertThat(found.middle()).isCloseTo(Math.log(2), within(4 * 0.0032)); // 1/√n at the median
    }
  }

  /**
   * 0 of 59: upper bound .049508 (Clopper–Pearson, one-sided 95 %, calculated with SciPy and R);
   * z(1 − .049508) = 1.64975, over 3.
   */
  @Test
  void byCountingIsAModestBound() {
    assertThat(CountedCapability.atLeast(new Proportion(0, 59), 0.95))
        .isCloseTo(0.5499, within(0.5e-4));
    assertThat(CountedCapability.atLeast(new Proportion(3, 3), 0.95))
        .isEqualTo(Double.NEGATIVE_INFINITY);
  }

  /**
   * The moving range's freedom against a simulation: ν of 30 values from the scatter of MR̄ over
   * 20,000 samples. The relative standard error of a variance from N normal values is √(2/N) = 1 %;
   * four of them, and 1 % for a χ that is not quite normal.
   */
  @Test
  void countsTheFreedomOfAMovingRange() {
    Random random = new Random(42);
    double[] sigmas = new double[20_000];
    for (int i = 0; i < sigmas.length; i++) {
      sigmas[i] = IndividualsChart.of(random.doubles(30).map(Normal::quantile).toArray()).sigma();
    }
    Description found = Description.of(sigmas);
    double cv = found.sd() / found.mean();

    assertThat(IndividualsChart.freedom(30)).isCloseTo(1 / (2 * cv * cv), within(0.05 * 18));
  }

  @Test
  void refusesLimitsTheWrongWayRound() {
    assertThatIllegalArgumentException().isThrownBy(() -> SpecifiedLimits.between(1, 1));
    assertThatIllegalArgumentException().isThrownBy(() -> SpecifiedLimits.atLeast(Double.NaN));
  }
}
