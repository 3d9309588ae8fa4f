package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Polynomials y = Σ a_k·x^k, whose harmonics for x = A·cos are known in closed form, rendered at
 * eight times the rate and then reduced, so that nothing folds back into the band.
 */
class DistortionTests {
  private static final double FS = 48_000;
  private static final int OVER = 8;
  private static final double[] COEFFICIENTS = {0, 1, 0.05, 0.02, 0.01, 0.005};
  private static final Captures RIG = new Captures(FS);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(RIG.sweep);

  /** The sweep with peak A through the polynomial; read again at the stimulus' own peak. */
  private static double[] capture(double[] a, double peak) {
    Sweep fast = new Sweep(10, 22_000, 1.2, OVER * FS, 0.01, 0.35, 0.3, RIG.sweep.amplitude());
    float[] sweep = SweepSignal.active(fast);
    double[] shaped = new double[(int) (1.85 * FS) * OVER];
    int lead = (int) (0.35 * FS) * OVER;
    for (int n = 0; n < sweep.length; n++) {
      double x = sweep[n] / fast.amplitude() * peak;
      double y = 0;
      for (int k = a.length - 1; k >= 0; k--) {
        y = y * x + a[k];
      }
      shaped[lead + n] = y * fast.amplitude() / peak * 0.5;
    }
    return reduced(shaped);
  }

  /**
   * Every eighth value behind a windowed sinc (Blackman, 64 periods): flat to 21 kHz, below −70 dB
   * from 27 kHz on.
   */
  private static double[] reduced(double[] fast) {
    int reach = 32 * OVER;
    double[] taps = new double[2 * reach + 1];
    double sum = 0;
    for (int k = -reach; k <= reach; k++) {
      double x = k / (double) OVER;
      double window =
          0.42 + 0.5 * Math.cos(Math.PI * k / reach) + 0.08 * Math.cos(2 * Math.PI * k / reach);
      taps[k + reach] = window * (k == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
      sum += taps[k + reach];
    }
    double[] slow = new double[fast.length / OVER];
    for (int n = 0; n < slow.length; n++) {
      double value = 0;
      for (int k = Math.max(-reach, -n * OVER);
          k <= Math.min(reach, fast.length - 1 - n * OVER);
          k++) {
        value += taps[k + reach] * fast[n * OVER + k];
      }
      slow[n] = value / sum;
    }
    return slow;
  }

  private static double h1(double a) {
    return a + 3 * 0.02 * Math.pow(a, 3) / 4 + 5 * 0.005 * Math.pow(a, 5) / 8;
  }

  /** Amplitudes of orders 2 … 5 over the fundamental's, by power reduction of cosines. */
  private static double[] closedForm(double a) {
    double a4 = Math.pow(a, 4);
    double a5 = Math.pow(a, 5);
    return new double[] {
      (0.05 * a * a / 2 + 0.01 * a4 / 2) / h1(a),
      (0.02 * a * a * a / 4 + 5 * 0.005 * a5 / 16) / h1(a),
      0.01 * a4 / 8 / h1(a),
      0.005 * a5 / 16 / h1(a)
    };
  }

  private static Distortion measured(double[] capture) throws UnusableCapture {
    return ANALYSER.analyseWithDistortion(RIG.samples(capture)).distortion();
  }

  @Nested
  class Harmonics {
    @ParameterizedTest
    @ValueSource(doubles = {1, 0.5, 0.25})
    void ofAPolynomialAreItsClosedForm(double peak) throws Exception {
      Distortion distortion = measured(capture(COEFFICIENTS, peak));
      double[] expected = closedForm(peak);
      for (int order = 2; order <= 3; order++) {
        for (int i = Grid.nearest(100); Grid.label(i) <= 5000; i++) {
          // the bar
          assertThat(distortion.harmonics().get(order - 2).at(i))
              .as("H%d at %s Hz, A = %s", order, Grid.label(i), peak)
              .isCloseTo(20 * Math.log10(expected[order - 2]), within(0.1));
        }
      }
    }

    @Test
    void giveThePublishedTotals() throws Exception {
      // THD_F 3.018922 % and THD_R 3.017548 % for these coefficients at A = 1 (FFT of the
      // polynomial, computed apart)
      Distortion distortion = measured(capture(COEFFICIENTS, 1));
      for (int i = Grid.nearest(100); Grid.label(i) <= 3870; i++) {
        // 0.1 dB is 1.2 % of the value
        assertThat(100 * distortion.thdF(i)).isCloseTo(3.018922, within(0.035));
        assertThat(100 * distortion.thdR(i)).isCloseTo(3.017548, within(0.035));
      }
    }

    @Test
    void areAbsentWhereTheyDoNotFit() throws Exception {
      Distortion distortion = measured(capture(COEFFICIENTS, 1));
      // n·f < 0.9·22 kHz: order 5 to 3.96 kHz, order 2 to 9.9 kHz; nothing below 50 Hz
      assertThat(distortion.harmonics().get(3).has(Grid.nearest(3870))).isTrue();
      assertThat(distortion.harmonics().get(3).has(Grid.nearest(4000))).isFalse();
      assertThat(distortion.thdF(Grid.nearest(4000))).isNaN();
      assertThat(distortion.harmonics().get(0).has(Grid.nearest(9750))).isTrue();
      assertThat(distortion.harmonics().get(0).has(Grid.nearest(10_000))).isFalse();
      assertThat(distortion.harmonics().get(0).has(Grid.nearest(48.7))).isFalse();
      // ten to thirteen times f below 19.8 kHz: to 1.5 kHz
      assertThat(distortion.highOrder().has(Grid.nearest(1500))).isTrue();
      assertThat(distortion.highOrder().has(Grid.nearest(1550))).isFalse();
    }
  }

  @Nested
  class Floor {
    @Test
    void isWhatNoiseShowsWhereNothingIsDistorted() throws Exception {
      double[] clean = RIG.through(FilterChain.of(FS), 0.35);
      double sum = 0;
      double predicted = 0;
      Band band = new Band(200, 1500);
      for (int seed = 0; seed < 12; seed++) {
        Distortion distortion = measured(RIG.noisy(clean, 55, seed));
        for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
          sum += Math.pow(10, distortion.highOrder().at(i) / 10);
          predicted += Math.pow(10, distortion.highOrderFloor().at(i) / 10);
        }
      }
      // 12 × 71 points with several independent values each: the mean is known to a few percent; 1
      // dB allows for the
      // lead-in's own estimate
      assertThat(10 * Math.log10(sum / predicted)).isCloseTo(0, within(1.0));
    }

    @Test
    void keepsNoiseOutOfTheTotal() throws Exception {
      Distortion distortion = measured(RIG.noisy(RIG.through(FilterChain.of(FS), 0.35), 45, 3));
      int at = Grid.nearest(1000);
      assertThat(distortion.thdFloor(at)).isPositive();
      // a single value of noise power exceeds ten times its mean with e^−10; none of four orders
      // here
      assertThat(distortion.thdF(at)).isZero();
    }
  }

  @Test
  void aBuzzRaisesTheHighOrders() throws Exception {
    double[] clean = RIG.through(FilterChain.of(FS), 0.35);
    double[] buzzing = clean.clone();
    Random random = new Random(2);
    for (int n = 1; n < buzzing.length; n++) {
      // short bursts while the excursion is near its top: wide-band, tied to the period
      if (clean[n] > 0.97 * RIG.sweep.amplitude()) {
        buzzing[n] += 0.003 * (random.nextBoolean() ? 1 : -1);
      }
    }
    int at = Grid.nearest(200);
    double quiet = measured(RIG.noisy(clean, 70, 1)).highOrder().at(at);
    assertThat(measured(RIG.noisy(buzzing, 70, 1)).highOrder().at(at)).isGreaterThan(quiet + 10);
  }
}
