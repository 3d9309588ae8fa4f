package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SweepTests {
  private static Sweep of(double f1, double f2, double seconds) {
    return new Sweep(f1, f2, seconds, 96_000, 0.01, 0.35, 0.3, 0.5);
  }

  /** Computed in Python from L = T/ln(f2/f1) and L·ln n (Farina 2000, Novak et al. 2015). */
  @Nested
  class Rate {
    @Test
    void isTheDurationOverTheLogOfTheRange() {
      // references have 12, 9 and 8 decimals
      assertThat(of(20, 20_000, 5).rate()).isCloseTo(0.723824136505, within(1e-12));
      assertThat(of(20, 20_000, 1).rate()).isCloseTo(0.144764827301, within(1e-12));
      // durations of the older, quantised synchronized form, whose L is a round number
      assertThat(of(20, 20_000, 4.835428695287).rate()).isCloseTo(0.7, within(1e-9));
      assertThat(of(10, 20_000, 9.881173197).rate()).isCloseTo(1.3, within(1e-9));
      assertThat(of(20, 22_000, 1.050459819).rate()).isCloseTo(0.15, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({
      "2, 0.501716659",
      "3, 0.795202091",
      "4, 1.003433319",
      "5, 1.164950007",
      "10, 1.666666667"
    })
    void saysHowMuchEarlierAHarmonicArrives(int order, double seconds) {
      assertThat(of(20, 20_000, 5).rate() * Math.log(order)).isCloseTo(seconds, within(1e-9));
    }

    @ParameterizedTest
    @CsvSource({"2, 0.100343332", "3, 0.159040418"})
    void saysItForAShortSweepToo(int order, double seconds) {
      assertThat(of(20, 20_000, 1).rate() * Math.log(order)).isCloseTo(seconds, within(1e-9));
    }
  }

  @Nested
  class Signal {
    private final Sweep sweep = Sweep.standard(48_000);
    private final float[] signal = SweepSignal.render(sweep);
    private final int lead = 16_800;

    @Test
    void hasItsSilencesAndItsLength() {
      assertThat(signal).hasSize((int) (1.85 * 48_000));
      for (int n = 0; n <= lead; n++) {
        assertThat(signal[n]).isZero();
      }
      for (int n = lead + 57_600; n < signal.length; n++) {
        assertThat(signal[n]).isZero();
      }
    }

    @Test
    void isTheLawBetweenItsFades() {
      // a 32-bit float near 0.25 is rounded by 1.5e-8 at most; the phase of 2·10⁴ radians adds
      // 1e-11
      double l = 1.2 / Math.log(2200);
      for (int n = 500; n < 57_000; n += 97) {
        double t = n / 48_000.0;
        double x = Math.pow(10, -0.6) * Math.sin(2 * Math.PI * 10 * l * Math.exp(t / l));
        assertThat((double) signal[lead + n]).isCloseTo(x, within(2e-8));
      }
    }

    @Test
    void fadesAsHalfACosine() {
      // in the middle of the fade-in (240 of 480 samples) the gain is one half
      double l = 1.2 / Math.log(2200);
      double x = Math.pow(10, -0.6) * Math.sin(2 * Math.PI * 10 * l * Math.exp(240 / 48_000.0 / l));
      assertThat((double) signal[lead + 240]).isCloseTo(0.5 * x, within(2e-8));
      assertThat(signal[lead + 57_599]).isZero();
    }

    @Test
    void shiftedByAHarmonicsAdvanceIsThatHarmonicOfItself() {
      // what "synchronized" means: the phase at t + L·ln n is n times the phase at t, so harmonics
      // add up in phase
      double l = sweep.rate();
      double t = 0.4;
      double phase = 2 * Math.PI * 10 * l * Math.exp(t / l);
      double later = 2 * Math.PI * 10 * l * Math.exp((t + l * Math.log(3)) / l);
      assertThat(later / phase).isCloseTo(3, within(1e-12));
      assertThat(
              SweepSignal.frequencyAt(sweep, t + l * Math.log(3))
                  / SweepSignal.frequencyAt(sweep, t))
          .isCloseTo(3, within(1e-12));
    }

    @Test
    void hasTheAnalyticSpectrum() {
      // |X(f)| = ½·√(L/f)·a (Novak et al. 2015, from memory). The ripple of a sweep's ends is below
      // 1 % well inside its band.
      Fourier fourier = new Fourier(131_072);
      double[] packed = new double[131_072];
      for (int n = 0; n < signal.length; n++) {
        packed[n] = signal[n];
      }
      fourier.forward(packed);
      BandPower power = new BandPower(Fourier.power(packed), 48_000 / 131_072.0);
      for (double hz : new double[] {100, 1000, 10_000}) {
        // averaged over ±1/3 octave, 1/f becomes ln(b/a)/(b − a)
        double a = hz * 0.8;
        double b = hz / 0.8;
        double density = Math.pow(sweep.amplitude() * 48_000, 2) * sweep.rate() / 4;
        double expected = density * Math.log(b / a) / (b - a);
        double mean = power.mean(a, b);
        assertThat(mean / expected).isCloseTo(1, within(0.01));
      }
    }
  }

  @Nested
  class Parameters {
    @Test
    void outOfRangeAreRefusedByName() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> of(0, 20_000, 1))
          .withMessageContaining("fromHz");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> of(20, 48_000, 1))
          .withMessageContaining("toHz");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> of(20, 20_000, Double.NaN))
          .withMessageContaining("seconds");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> of(20, 20_000, 0.01))
          .withMessageContaining("fades");
    }
  }
}
