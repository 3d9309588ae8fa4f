package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Harmonics and totals of polynomials y = Σ a_k·x^k, whose harmonics for x = A·cos are known in
 * closed form (power reduction of cosines; checked apart by an FFT of the polynomial to 1e−12).
 */
class HarmonicTests {
  private static final Captures RIG = new Captures(Nonlinear.FS);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(RIG.sweep);
  private static final double[] COEFFICIENTS = {1, 0.05, 0.02, 0.01, 0.005};
  private static final Distortion AT_FULL_DRIVE = measuredAtFullDrive();

  private static Distortion measured(double[] a, double peak) throws UnusableCapture {
    double[] capture =
        Nonlinear.memoryless(
            x -> x * (a[0] + x * (a[1] + x * (a[2] + x * (a[3] + x * a[4])))), peak);
    return ANALYSER.analyseWithDistortion(RIG.samples(capture)).distortion();
  }

  private static Distortion measuredAtFullDrive() {
    try {
      return measured(COEFFICIENTS, 1);
    } catch (UnusableCapture e) {
      throw new IllegalStateException(e);
    }
  }

  /** Level of order 2 or 3 over the fundamental, dB, by hand. */
  private static double closedForm(int order, double[] a, double peak) {
    double h1 = a[0] * peak + 3 * a[2] * Math.pow(peak, 3) / 4 + 5 * a[4] * Math.pow(peak, 5) / 8;
    double h2 = a[1] * Math.pow(peak, 2) / 2 + a[3] * Math.pow(peak, 4) / 2;
    double h3 = a[2] * Math.pow(peak, 3) / 4 + 5 * a[4] * Math.pow(peak, 5) / 16;
    return 20 * Math.log10((order == 2 ? h2 : h3) / h1);
  }

  private static void assertOrders(Distortion distortion, double peak, double toHz, double bar) {
    for (int order = 2; order <= 3; order++) {
      for (int i = Grid.nearest(100); Grid.label(i) <= toHz; i++) {
        assertThat(distortion.harmonics().get(order - 2).at(i))
            .as("H%d at %s Hz, A = %s", order, Grid.label(i), peak)
            .isCloseTo(closedForm(order, COEFFICIENTS, peak), within(bar));
      }
    }
  }

  @Nested
  class TheSecondAndTheThird {
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.5, 0.25})
    void areTheirClosedFormWithinTheBar(double peak) throws Exception {
      // 0.1 dB, 100 Hz to 5 kHz; the weakest is H3 at A = 0.25, 70 dB under the fundamental
      assertOrders(measured(COEFFICIENTS, peak), peak, 5000, 0.1);
    }

    @Test
    void areTheirClosedFormWithinAHundredthAtFullDrive() {
      // without noise only the windows' cut is left; up to 6 kHz, where H3 ends
      assertOrders(AT_FULL_DRIVE, 1, 6000, 0.01);
    }

    @Test
    void standForALoneOrderToo() throws Exception {
      // H2 = 0.1/2 of H1 = 1: −26.0206 dB; H3 then is nothing, 60 dB below it at least
      Distortion second = measured(new double[] {1, 0.1, 0, 0, 0}, 1);
      // H3 = 0.1/4 of H1 = 1.075: −32.6694 dB
      Distortion third = measured(new double[] {1, 0, 0.1, 0, 0}, 1);
      for (int i = Grid.nearest(100); Grid.label(i) <= 5000; i++) {
        assertThat(second.harmonics().get(0).at(i)).isCloseTo(-26.0206, within(0.01));
        assertThat(second.harmonics().get(1).at(i)).isLessThan(-86);
        assertThat(third.harmonics().get(1).at(i)).isCloseTo(-32.6694, within(0.01));
        assertThat(third.harmonics().get(0).at(i)).isLessThan(-86);
      }
    }
  }

  @Test
  void theFourthAndTheFifthAreTheirClosedForm() {
    for (int i = Grid.nearest(100); Grid.label(i) <= 3870; i++) {
      // −58.2178 and −70.2590 dB for these coefficients at A = 1; the bar of the second and third
      assertThat(AT_FULL_DRIVE.harmonics().get(2).at(i)).isCloseTo(-58.2178, within(0.1));
      assertThat(AT_FULL_DRIVE.harmonics().get(3).at(i)).isCloseTo(-70.2590, within(0.1));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0.1, 0, 0, 0, 1, 5.000000, 4.993762",
    "0, 0.1, 0, 0, 1, 2.325581, 2.324953",
    "0.05, 0.02, 0.01, 0.005, 1, 3.018922, 3.017548",
    "0.05, 0.02, 0.01, 0.005, 0.5, 1.314309, 1.314196"
  })
  void giveTheTotalsOfTheTable(
      double a2, double a3, double a4, double a5, double peak, double thdF, double thdR)
      throws Exception {
    Distortion distortion = measured(new double[] {1, a2, a3, a4, a5}, peak);
    for (int i = Grid.nearest(100); Grid.label(i) <= 3870; i++) {
      // 0.01 dB of the largest order is 0.12 % of the total
      assertThat(100 * distortion.thdF(i)).isCloseTo(thdF, within(0.0012 * thdF));
      assertThat(100 * distortion.thdR(i)).isCloseTo(thdR, within(0.0012 * thdR));
    }
  }

  @Test
  void areAbsentWhereTheyDoNotFit() {
    // n·f < 0.9·22 kHz: order 5 to 3.96 kHz, order 2 to 9.9 kHz; nothing below 50 Hz
    assertThat(AT_FULL_DRIVE.harmonics().get(3).has(Grid.nearest(3870))).isTrue();
    assertThat(AT_FULL_DRIVE.harmonics().get(3).has(Grid.nearest(4000))).isFalse();
    assertThat(AT_FULL_DRIVE.thdF(Grid.nearest(4000))).isNaN();
    assertThat(AT_FULL_DRIVE.harmonics().get(0).has(Grid.nearest(9750))).isTrue();
    assertThat(AT_FULL_DRIVE.harmonics().get(0).has(Grid.nearest(10_000))).isFalse();
    assertThat(AT_FULL_DRIVE.harmonics().get(0).has(Grid.nearest(48.7))).isFalse();
    // ten to thirteen times f below 19.8 kHz: to 1.5 kHz
    assertThat(AT_FULL_DRIVE.highOrder().has(Grid.nearest(1500))).isTrue();
    assertThat(AT_FULL_DRIVE.highOrder().has(Grid.nearest(1550))).isFalse();
  }

  @Test
  void doNotCountInTheTotalWhereTheyAreOnlyNoise() throws Exception {
    double[] wire = RIG.through(FilterChain.of(Nonlinear.FS), 0.35);
    Samples noisy = RIG.samples(RIG.noisy(wire, 45, 3));
    Distortion distortion = ANALYSER.analyseWithDistortion(noisy).distortion();
    int at = Grid.nearest(1000);
    assertThat(distortion.thdFloor(at)).isPositive();
    // a single value of noise power exceeds ten times its mean with e^−10; none of four orders here
    assertThat(distortion.thdF(at)).isZero();
  }
}
