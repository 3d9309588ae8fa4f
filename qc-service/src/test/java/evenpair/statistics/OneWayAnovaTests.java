package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** NIST StRD, analysis of variance; certified values stand in the copied files. */
class OneWayAnovaTests {
  @Test
  void findsTheCertifiedValuesOfSiRstv() {
    OneWayAnova found = OneWayAnova.of(StrdFile.groups("SiRstv"));

    // stored numbers near 196 are off by up to 1.4e-14; against deviations near 0.1 that is
    // 1.4e-13, doubled by squaring
    assertRelative(found.between().sumOfSquares(), 5.11462616e-2, 1e-9); // printed to nine digits
    assertRelative(found.within().sumOfSquares(), 2.1663656e-1, 1e-8); // printed to eight digits
    assertRelative(found.f(), 1.18046237440255, 2e-12);
    assertThat(found.between().degreesOfFreedom()).isEqualTo(4);
    assertThat(found.within().degreesOfFreedom()).isEqualTo(20);
    assertThat(found.p()).isCloseTo(0.3494474934, within(1e-9)); // SciPy, to ten decimals
  }

  @Test
  void findsTheCertifiedValuesOfAnIllConditionedSet() {
    OneWayAnova found = OneWayAnova.of(StrdFile.groups("AtmWtAg"));

    // Numbers near 107.868 are stored, and their means rounded, to 7e-15 each; group means lie
    // 8.7e-6 from the grand mean: 1.6e-9 of that, doubled by squaring.
    assertRelative(found.between().sumOfSquares(), 3.63834187500000e-9, 3.2e-9);
    assertRelative(found.within().sumOfSquares(), 1.04951729166667e-8, 1e-9);
    assertRelative(found.f(), 15.9467335677930, 3.2e-9);
  }

  @Test
  void refusesWhatCannotBeCompared() {
    assertThatIllegalArgumentException().isThrownBy(() -> OneWayAnova.of(new double[] {1, 2}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> OneWayAnova.of(new double[] {1}, new double[] {2}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> OneWayAnova.of(new double[] {1, 2}, new double[0]));
  }

  private static void assertRelative(double found, double expected, double share) {
    assertThat(found).isCloseTo(expected, within(share * Math.abs(expected)));
  }
}
