package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.IdleNoise.Origin;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class IdleNoiseTests {
  private static final double FS = 48_000;

  @Nested
  class Weightings {
    /**
     * Nominal weightings of IEC 61672-1:2013, table 3 (as published in an open acoustics library's
     * data), and the formula's values computed apart, at the exact midbands 10^(n/10) Hz.
     */
    @ParameterizedTest
    @CsvSource({
      "10, -70.4, -70.430, -14.3, -14.330",
      "11, -63.4, -63.371, -11.2, -11.249",
      "12, -56.7, -56.688, -8.5, -8.531",
      "13, -50.5, -50.452, -6.2, -6.240",
      "14, -44.7, -44.703, -4.4, -4.405",
      "15, -39.4, -39.440, -3.0, -3.010",
      "16, -34.6, -34.630, -2.0, -1.999",
      "17, -30.2, -30.228, -1.3, -1.294",
      "18, -26.2, -26.194, -0.8, -0.818",
      "19, -22.5, -22.504, -0.5, -0.504",
      "20, -19.1, -19.143, -0.3, -0.300",
      "21, -16.1, -16.098, -0.2, -0.169",
      "22, -13.4, -13.350, -0.1, -0.085",
      "23, -10.9, -10.870, 0.0, -0.033",
      "24, -8.6, -8.630, 0.0, 0.000",
      "25, -6.6, -6.611, 0.0, 0.019",
      "26, -4.8, -4.808, 0.0, 0.029",
      "27, -3.2, -3.233, 0.0, 0.033",
      "28, -1.9, -1.900, 0.0, 0.029",
      "29, -0.8, -0.824, 0.0, 0.019",
      "30, 0, 0, 0, 0",
      "31, 0.6, 0.591, 0.0, -0.033",
      "32, 1.0, 0.981, -0.1, -0.085",
      "33, 1.2, 1.200, -0.2, -0.169",
      "34, 1.3, 1.271, -0.3, -0.300",
      "35, 1.2, 1.199, -0.5, -0.504",
      "36, 1.0, 0.970, -0.8, -0.818",
      "37, 0.5, 0.549, -1.3, -1.294",
      "38, -0.1, -0.121, -2.0, -1.999",
      "39, -1.1, -1.111, -3.0, -3.010",
      "40, -2.5, -2.492, -4.4, -4.405",
      "41, -4.3, -4.318, -6.2, -6.240",
      "42, -6.6, -6.603, -8.5, -8.531",
      "43, -9.3, -9.317, -11.2, -11.249"
    })
    void areTheStandardsTable(int n, double tableA, double a, double tableC, double c) {
      double hz = Math.pow(10, n / 10.0);
      // three decimals are given; the table has one
      assertThat(Weighting.A.db(hz)).isCloseTo(a, within(6e-4));
      assertThat(Weighting.C.db(hz)).isCloseTo(c, within(6e-4));
      assertThat(Math.round(Weighting.A.db(hz) * 10) / 10.0).isEqualTo(tableA);
      assertThat(Math.round(Weighting.C.db(hz) * 10) / 10.0 + 0.0).isEqualTo(tableC);
    }
  }

  @Nested
  class Level {
    @Test
    void ofAToneAtOneKilohertzIsItsOwn() {
      // a peak of 0.01 is an r.m.s. of 0.00707; the window spreads it over bins whose weighting
      // differs by less than 0.01 dB
      IdleNoise noise = IdleNoise.of(new Samples(tone(1000, 0.01, 3), FS));
      assertThat(20 * Math.log10(noise.weightedRms()))
          .isCloseTo(20 * Math.log10(0.01 / Math.sqrt(2)), within(0.02));
    }

    @Test
    void ofAToneAtAHundredHertzIsWeighted() {
      IdleNoise noise = IdleNoise.of(new Samples(tone(100, 0.01, 3), FS));
      // −19.143 dB at 100 Hz; the curve is steep there, 0.07 dB a bin and side, which the window's
      // symmetry evens out
      assertThat(20 * Math.log10(noise.weightedRms() / (0.01 / Math.sqrt(2))))
          .isCloseTo(-19.143, within(0.1));
    }

    @Test
    void ofWhiteNoiseIsTheWeightingsArea() {
      // ∫A² df from 20 Hz to 24 kHz over 24 kHz, by the trapezoid in steps of 1 Hz
      double area = 0;
      for (int f = 20; f < 24_000; f++) {
        area += 0.5 * (Weighting.A.power(f) + Weighting.A.power(f + 1));
      }
      Random random = new Random(3);
      float[] values = new float[480_000];
      for (int n = 0; n < values.length; n++) {
        values[n] = (float) (0.001 * random.nextGaussian());
      }
      IdleNoise noise = IdleNoise.of(new Samples(values, FS));
      // 10 s of 10 kHz of band: 10⁵ independent values, 0.5 % or 0.02 dB; 0.1 dB is five of these
      assertThat(20 * Math.log10(noise.weightedRms() / 0.001))
          .isCloseTo(10 * Math.log10(area / 24_000), within(0.1));
      assertThat(noise.averages()).isEqualTo(39);
    }

    @Test
    void isNotGivenForLessThanFourAverages() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> IdleNoise.of(new Samples(new float[59_000], FS)))
          .withMessageContaining("4 averages");
      assertThat(IdleNoise.of(new Samples(tone(1000, 0.01, 1.25), FS)).averages()).isEqualTo(4);
    }
  }

  @Nested
  class Tones {
    @ParameterizedTest
    @CsvSource({
      "1000, USB_FRAME",
      "3000, USB_FRAME",
      "8000, USB_MICRO_FRAME",
      "16000, USB_MICRO_FRAME",
      "1234.5, UNNAMED",
      "50, UNNAMED"
    })
    void areFoundAndNamed(double hz, Origin origin) {
      float[] values = tone(hz, 0.0002, 10);
      Random random = new Random(5);
      for (int n = 0; n < values.length; n++) {
        values[n] += (float) (0.001 * random.nextGaussian());
      }
      // 0.0002 peak over noise of 0.001 r.m.s. in 1.5 Hz bins (Hann: 3 Hz): 2e-8 over 1.3e-10, some
      // 20 dB
      IdleNoise noise = IdleNoise.of(new Samples(values, FS));
      assertThat(noise.tones()).hasSize(1);
      assertThat(noise.tones().get(0).hz()).isCloseTo(hz, within(0.8));
      assertThat(noise.tones().get(0).origin()).isEqualTo(origin);
      assertThat(noise.tones().get(0).aboveDb()).isBetween(17.0, 26.0);
    }

    @Test
    void areNotSeenInPlainNoise() {
      Random random = new Random(6);
      float[] values = new float[480_000];
      for (int n = 0; n < values.length; n++) {
        values[n] = (float) (0.001 * random.nextGaussian());
      }
      assertThat(IdleNoise.of(new Samples(values, FS)).tones()).isEmpty();
    }
  }

  private static float[] tone(double hz, double peak, double seconds) {
    float[] values = new float[(int) (seconds * FS)];
    for (int n = 0; n < values.length; n++) {
      values[n] = (float) (peak * Math.sin(2 * Math.PI * hz * n / FS));
    }
    return values;
  }
}
