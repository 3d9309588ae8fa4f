package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.junit.jupiter.api.Test;

class RobustColumnsTests {
  private static final double ABSENT = Double.NaN;

  @Test
  void areNotMovedByAnOddRow() {
    double[][] rows = {{1, 10}, {2, 20}, {4, ABSENT}, {7, 40}, {1000, ABSENT}};

    RobustColumns found = RobustColumns.of(rows, 2);

    // by hand: median 4, |x − 4| = 3 2 0 3 996; median 20, |x − 20| = 10 0 20
    assertThat(found.count()).containsExactly(5, 3);
    assertThat(found.median()).containsExactly(4, 20);
    assertThat(found.deviation()).containsExactly(3, 10);
  }

  @Test
  void takeTheMeanOfTheMiddleTwo() {
    assertThat(RobustColumns.median(new double[] {4, 1, 3, 2})).isEqualTo(2.5);
  }

  @Test
  void areAbsentWhereAColumnIsEmpty() {
    RobustColumns found = RobustColumns.of(new double[][] {{ABSENT}, {ABSENT}}, 1);

    assertThat(found.count()).containsExactly(0);
    assertThat(found.median()[0]).isNaN();
    assertThat(found.deviation()[0]).isNaN();
  }

  /** ISO 13528's data on creosote, whose start values are printed with the factor 1.483. */
  @Test
  void startTheRobustAnalysisOfIso13528() {
    double[] means = {24.140, 20.155, 19.500, 20.300, 20.705, 17.570, 20.100, 20.940, 21.185};
    double[][] rows = new double[means.length][];
    for (int i = 0; i < means.length; i++) {
      rows[i] = new double[] {means[i]};
    }

    RobustColumns found = RobustColumns.of(rows, 1);

    assertThat(found.median()[0]).isEqualTo(20.3);
    assertThat(1.483 * found.deviation()[0]).isCloseTo(0.949120, within(5.1e-7)); // six decimals
  }

  @Test
  void estimateANormalStandardDeviation() {
    double quartile = new NormalDistribution().inverseCumulativeProbability(0.75);

    // the library's inverse is good to 1e-9
    assertThat(RobustColumns.TO_STANDARD_DEVIATION).isCloseTo(1 / quartile, within(1e-8));
  }
}
