package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import java.util.Arrays;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class ControlChartTests {
  /** As R's package qcc prints it for the piston rings; half a unit of the last digit. */
  @Nested
  class OfSubgroups {
    private final double[] rings = Measured.pistonRings();
    private final SubgroupChart chart = SubgroupChart.of(rings, 5, 25).told().orElseThrow();

    @Test
    void hasThePublishedLimitsOfTheMeansFromTheRange() {
      // qcc takes R̄/d₂ with the table's d₂ = 2.326: σ̂ = 0.009785039, limits 73.98805 and 74.0143
      double range = 0;
      for (int g = 0; g < 25; g++) {
        double[] group = Arrays.copyOfRange(rings, 5 * g, 5 * g + 5);
        range +=
            Arrays.stream(group).max().getAsDouble() - Arrays.stream(group).min().getAsDouble();
      }
      ChartConstants five = ChartConstants.of(5);
      range /= 25;

      assertThat(range).isCloseTo(0.02276, within(0.5e-5));
      // 2.326 against 2.32593: a relative difference of 3e-5
      assertThat(range / five.d2()).isCloseTo(0.009785039, within(0.009785039 * 4e-5));
      assertThat(chart.means().centre() + five.a2() * range).isCloseTo(74.0143, within(0.5e-4));
      assertThat(chart.means().centre() - five.a2() * range).isCloseTo(73.98805, within(0.5e-5));
      assertThat(five.upperCaseD4() * range).isCloseTo(0.04812533, within(5e-6));
    }

    @Test
    void hasThePublishedStandardDeviations() {
      assertThat(chart.means().centre()).isCloseTo(74.001176, within(0.5e-6));
      assertThat(chart.deviations().centre()).isCloseTo(0.009240037, within(0.5e-9));
      assertThat(chart.sigma()).isCloseTo(0.009829977, within(0.5e-9));
      assertThat(chart.deviations().lower()[0]).isZero();
      assertThat(chart.deviations().upper()[0]).isCloseTo(0.01930242, within(0.5e-8));
    }

    /** Groups 37 to 40 hold the shift of the published example. */
    @Test
    void showsTheShiftOfTheLastGroups() {
      assertThat(Arrays.stream(chart.means().outside()).boxed())
          .contains(36, 37, 38)
          .allMatch(group -> group >= 36);
    }

    @Test
    void leavesAnUnfilledGroupOut() {
      SubgroupChart shorter =
          SubgroupChart.of(Arrays.copyOf(rings, 127), 5, 25).told().orElseThrow();

      assertThat(shorter.means().points()).hasSize(25);
    }

    @Test
    void saysHowManyUnitsItNeeds() {
      assertThat(SubgroupChart.of(Arrays.copyOf(rings, 49), 5, 25))
          .isEqualTo(new NotEnough<>(Lack.UNITS, 49, 50));
      assertThat(SubgroupChart.of(new double[60], 5, 25))
          .isEqualTo(new NotEnough<>(Lack.SPREAD, 1, 2));
    }
  }

  @Nested
  class Ewma {
    /** As R's package qcc prints it for the first 25 groups: λ = 0.2, σ̂ from R̄/2.326. */
    @Test
    void hasThePublishedLimitsAtEachTime() {
      ControlChart chart =
          EwmaChart.of(new double[25], 74.001176, 0.009785039 / Math.sqrt(5), 0.2, 3);

      assertThat(chart.lower()[0]).isCloseTo(73.99855, within(0.5e-5));
      assertThat(chart.upper()[0]).isCloseTo(74.00380, within(0.5e-5));
      assertThat(chart.lower()[1]).isCloseTo(73.99781, within(0.5e-5));
      assertThat(chart.upper()[1]).isCloseTo(74.00454, within(0.5e-5));
      assertThat(chart.lower()[24]).isCloseTo(73.99680, within(0.5e-5));
      assertThat(chart.upper()[24]).isCloseTo(74.00555, within(0.5e-5));
    }

    /** NIST/SEMATECH e-Handbook 6.3.2.4 (from memory, calculated); two decimals. */
    @Test
    void followsThePublishedAverages() {
      double[] data = {
        52.0, 47.0, 53.0, 49.3, 50.1, 47.0, 51.0, 50.1, 51.2, 50.5, 49.6, 47.6, 49.9, 51.3, 47.8,
        51.2, 52.6, 52.4, 53.6, 52.1
      };
      ControlChart chart = EwmaChart.of(data, 50, 2.0539, 0.3, 3);

      assertThat(chart.points())
          .containsExactly(
              new double[] {
                50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36,
                49.52, 50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99
              },
              within(0.0051));
      assertThat(Arrays.copyOf(chart.upper(), 5))
          .containsExactly(
              new double[] {51.8485, 52.2564, 52.4314, 52.5127, 52.5516}, within(0.5e-4));
      assertThat(chart.outside()).isEmpty();
    }
  }

  /** NIST/SEMATECH e-Handbook 6.3.2.3 (from memory, calculated). */
  @Nested
  class Cusum {
    private final double[] means = {
      324.925, 324.675, 324.725, 324.350, 325.350, 325.225, 324.125, 324.525, 325.225, 324.600,
      324.625, 325.150, 328.325, 327.250, 327.825, 328.500, 326.675, 327.775, 326.875, 328.350
    };
    private final CusumChart chart = CusumChart.of(means, 325, 0.3175, 4.1959);

    @Test
    void sumsAsPublished() {
      // exact decimals of the data
      assertThat(chart.high())
          .containsExactly(
              new double[] {
                0, 0, 0, 0, 0.0325, 0, 0, 0, 0, 0, 0, 0, 3.0075, 4.94, 7.4475, 10.63, 11.9875,
                14.445, 16.0025, 19.035
              },
              within(1e-9));
      assertThat(Arrays.copyOf(chart.low(), 12))
          .containsExactly(
              new double[] {0, 0.0075, 0, 0.3325, 0, 0, 0.5575, 0.715, 0.1725, 0.255, 0.3125, 0},
              within(1e-9));
    }

    @Test
    void signalsAtGroupFourteenAndSaysWhereItBegan() {
      assertThat(chart.shifts()).containsExactly(new CusumChart.Shift(true, 12, 13, 19));
    }

    @Test
    void isSilentWithoutAShift() {
      assertThat(CusumChart.of(Arrays.copyOf(means, 12), 325, 0.3175, 4.1959).shifts()).isEmpty();
    }

    /** By hand, k = 1 and h = 2: up 2, 4, then down through 0. */
    @Test
    void tellsTwoShiftsApart() {
      CusumChart twice = CusumChart.of(new double[] {0, 3, 3, -9, -4, 9, 9}, 0, 1, 2);

      assertThat(twice.shifts())
          .containsExactly(
              new CusumChart.Shift(true, 1, 2, 2),
              new CusumChart.Shift(false, 3, 3, 4),
              new CusumChart.Shift(true, 5, 5, 6));
    }
  }

  /**
   * NIST/SEMATECH e-Handbook 6.3.3.2: limits as R's package qcc prints them for the same counts,
   * half a unit of the last digit; wafers 15 and 23 signal.
   */
  @Test
  void ofProportionsHasThePublishedLimits() {
    double[] shares = Measured.handbook("MONITOR-6_3_3_2");
    int[] hits = Arrays.stream(shares).mapToInt(share -> (int) Math.rint(50 * share)).toArray();
    int[] sizes = new int[hits.length];
    Arrays.fill(sizes, 50);

    ControlChart chart = ProportionChart.of(hits, sizes).told().orElseThrow();

    assertThat(hits).hasSize(30);
    assertThat(chart.centre()).isCloseTo(0.2313333, within(0.5e-7));
    assertThat(chart.lower()[0]).isCloseTo(0.05242755, within(0.5e-8));
    assertThat(chart.upper()[0]).isCloseTo(0.4102391, within(0.5e-7));
    assertThat(chart.outside()).containsExactly(14, 22);
    assertThat(ProportionChart.of(new int[9], new int[9]))
        .isEqualTo(new NotEnough<>(Lack.GROUPS, 9, 10));
  }

  @Test
  void refusesWhatIsNoChart() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> EwmaChart.of(new double[3], 0, 0, 0.2, 3));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> CusumChart.of(new double[3], 0, 0.5, Double.NaN));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> ProportionChart.of(new int[3], new int[2]));
  }
}
