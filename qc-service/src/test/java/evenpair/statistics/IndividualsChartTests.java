package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class IndividualsChartTests {
  /**
   * NIST/SEMATECH e-Handbook, 6.3.2.2 (from memory and calculated): mean 50.81, mean moving range
   * 1.8778; limits with the exact d₂ 45.8176 and 55.8024 (the handbook's d₂ = 1.128 gives 55.8041),
   * of the moving range 1.87778 · 3.2665 = 6.1338 with D₄ from closed forms (the printed 6.1347
   * takes the tables' 3.267). Printed to four decimals.
   */
  @Test
  void hasThePublishedLimits() {
    IndividualsChart chart =
        IndividualsChart.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);

    assertThat(chart.mean()).isCloseTo(50.81, within(1e-9));
    assertThat(chart.meanMovingRange()).isCloseTo(1.8778, within(0.00005));
    assertThat(chart.lower()).isCloseTo(45.8176, within(0.00005));
    assertThat(chart.upper()).isCloseTo(55.8024, within(0.00005));
    assertThat(chart.movingRangeUpper()).isCloseTo(6.1338, within(0.0001));
  }

  @Test
  void signalsOutsideItsLimitsOnly() {
    IndividualsChart chart = new IndividualsChart(10, 2 / Math.sqrt(Math.PI)); // sigma 1

    assertThat(chart.signals(12.99)).isFalse();
    assertThat(chart.signals(13.01)).isTrue();
    assertThat(chart.signals(6.99)).isTrue();
  }

  @Test
  void needsTwoNumbers() {
    assertThatIllegalArgumentException().isThrownBy(() -> IndividualsChart.of(1));
    assertThatIllegalArgumentException().isThrownBy(() -> IndividualsChart.of(1, Double.NaN));
  }
}
