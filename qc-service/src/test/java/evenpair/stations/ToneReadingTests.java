package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Samples;
import evenpair.stations.UnfitTone.Flaw;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ToneReadingTests {
  private static final double RATE = 48_000;
  private static final StationSettings SETTINGS = TestSettings.DEFAULTS;

  @Nested
  class AGoodTone {
    /**
     * 94 dB re 20 µPa is 1.002374467 Pa and 114 dB is 10.02374467 Pa r.m.s. (calculated from the
     * definition). A is 0.1 and 0.5, so √2·p/A is 14.175716… and 28.351431… Pa. The samples repeat
     * every 48, so that their rounding to float (half a step is 6e-8 of the value at most) does not
     * average out.
     */
    @ParameterizedTest
    @CsvSource({"94, 0.1, 1.002374467", "114, 0.5, 10.02374467"})
    void givesThePressureThatFullScaleStandsFor(double levelDb, double amplitude, double pascalRms)
        throws UnfitTone {
      ToneReading reading = read(tone(2, amplitude, 1000));
      assertThat(reading.pascalPerFullScale(levelDb))
          .isCloseTo(Math.sqrt(2) * pascalRms / amplitude, within(6e-8 * 29));
    }

    /** A full-scale sine is 20 dB above a tone of a tenth of full scale: 94 + 20 = 114 dB. */
    @Test
    void givesTheLevelOfFullScale() throws UnfitTone {
      double pascal = read(tone(2, 0.1, 1000)).pascalPerFullScale(94);
      assertThat(ToneReading.fullScaleLevelDb(pascal)).isCloseTo(114, within(1e-6));
    }

    /** The calibrator's own 250 Hz tone, a pistonphone's. */
    @Test
    void mayHaveAnotherFrequency() throws UnfitTone {
      assertThat(ToneReading.of(tone(2, 0.3, 251.2), 1, 250, SETTINGS).frequencyHz())
          .isCloseTo(251.2, within(1e-6));
    }

    @Test
    void mayBeginLateAndEndEarly() throws UnfitTone {
      Samples recording = shaped(6, 1000, t -> t < 1.03 || t > 4.41 ? 0 : 0.2);
      ToneReading reading = read(recording);
      // 1.03 … 4.41 s is 3.38 s; each ragged end costs up to two blocks of 50 ms.
      assertThat(reading.steadySeconds()).isBetween(3.38 - 0.2, 3.38);
      assertThat(reading.amplitude()).isCloseTo(0.2, within(1e-8));
    }

    /** A knock on the bench spoils one stretch; the longest quiet one is used. */
    @Test
    void mayBeKnockedAgainst() throws UnfitTone {
      Samples recording = tone(4, 0.2, 1000);
      for (int n = 0; n < 200; n++) {
        recording.values()[60_000 + n] += 0.5f;
      }
      assertThat(read(recording).amplitude()).isCloseTo(0.2, within(1e-8));
    }

    /**
     * Noise 46 dB below the tone is 0.5 % of it; the amplitude's bound is σ·√(2/N), here
     * 0.0007·0.0046 = 3e-6; five of it.
     */
    @Test
    void mayBeALittleNoisy() throws UnfitTone {
      ToneReading reading = read(noisy(tone(2, 0.2, 1000), 0.2 / Math.sqrt(2) * 0.005));
      assertThat(reading.amplitude()).isCloseTo(0.2, within(1.6e-5));
      // The residual's own scatter is 1/√(2N) = 0.23 %; a steady part without its ends is as long
      // as the recording.
      assertThat(reading.distortionPercent()).isCloseTo(0.5, within(0.5 * 5 * 0.0023));
    }
  }

  @Nested
  class IsRefused {
    @Test
    void clippedAndNamesWhere() {
      Samples recording = shaped(2, 1000, t -> 1.2);
      for (int n = 0; n < recording.values().length; n++) {
        recording.values()[n] = Math.max(-1, Math.min(1, recording.values()[n]));
      }
      UnfitTone unfit = refusal(recording);
      assertThat(unfit.flaw()).isEqualTo(Flaw.CLIPPED);
      assertThat(unfit.measured()).isGreaterThanOrEqualTo(3);
      assertThat(unfit)
          .hasMessageContaining("full scale")
          .hasMessageContaining("s after its start");
    }

    /** 16-bit full scale is 32767/32768, not 1. */
    @Test
    void clippedAtTheFormatsOwnFullScale() {
      float full = 32767f / 32768;
      Samples recording = shaped(2, 1000, t -> 1.2);
      for (int n = 0; n < recording.values().length; n++) {
        recording.values()[n] = Math.max(-1, Math.min(full, recording.values()[n]));
      }
      UnfitTone unfit =
          catchThrowableOfType(
              UnfitTone.class, () -> ToneReading.of(recording, full, 1000, SETTINGS));
      assertThat(unfit.flaw()).isEqualTo(Flaw.CLIPPED);
    }

    /** Clipped before the converter: no sample at full scale, but far from a sine. */
    @Test
    void clippedInAnAmplifierAsDistorted() {
      Samples recording = tone(2, 0.5, 1000);
      for (int n = 0; n < recording.values().length; n++) {
        recording.values()[n] = Math.max(-0.4f, Math.min(0.4f, recording.values()[n]));
      }
      assertThat(refusal(recording).flaw()).isEqualTo(Flaw.DISTORTED);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.5, 0.9})
    void tooShort(double seconds) {
      UnfitTone unfit = refusal(tone(seconds, 0.2, 1000));
      assertThat(unfit.flaw()).isEqualTo(Flaw.TOO_SHORT);
      assertThat(unfit.allowed()).isEqualTo(1);
    }

    @Test
    void withATonePartThatIsTooShort() {
      assertThat(refusal(shaped(5, 1000, t -> t > 2 && t < 2.8 ? 0.2 : 0)).flaw())
          .isEqualTo(Flaw.TOO_SHORT);
    }

    /**
     * 0.3 dB over the recording; the first and last quarter second's means are 1 − 0.25/3 of that
     * apart: 0.275 dB.
     */
    @Test
    void driftingAndSaysByHowMuch() {
      UnfitTone unfit = refusal(shaped(3, 1000, t -> 0.2 * Math.pow(10, 0.3 * t / 3 / 20)));
      assertThat(unfit.flaw()).isEqualTo(Flaw.UNSTEADY);
      assertThat(unfit.measured()).isCloseTo(0.275, within(0.002));
    }

    @Test
    void noisyAndSaysByHowMuch() {
      UnfitTone unfit = refusal(noisy(tone(2, 0.2, 1000), 0.2 / Math.sqrt(2) * 0.05));
      assertThat(unfit.flaw()).isEqualTo(Flaw.DISTORTED);
      assertThat(unfit.measured()).isCloseTo(5, within(5 * 5 * 0.0023));
    }

    @ParameterizedTest
    @ValueSource(doubles = {970, 1025, 250, 50})
    void atAnotherFrequencyThanStated(double hz) {
      UnfitTone unfit = refusal(tone(2, 0.2, hz));
      assertThat(unfit.flaw()).isEqualTo(Flaw.OFF_FREQUENCY);
      assertThat(unfit.measured()).isCloseTo(Math.abs(hz - 1000), within(1e-5));
      assertThat(unfit.allowed()).isCloseTo(20, within(1e-9));
    }

    @Test
    void absurdlyWeak() {
      assertThat(refusal(tone(2, 0.0005, 1000)).flaw()).isEqualTo(Flaw.TOO_WEAK);
    }

    @Test
    void silent() {
      UnfitTone unfit = refusal(tone(2, 0, 1000));
      assertThat(unfit.flaw()).isEqualTo(Flaw.TOO_WEAK);
    }

    /** A constant has a level but no sine in it. */
    @Test
    void aConstant() {
      Samples constant = tone(2, 0, 1000);
      java.util.Arrays.fill(constant.values(), 0.3f);
      assertThat(refusal(constant).flaw()).isEqualTo(Flaw.DISTORTED);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void noiseAlone(long seed) {
      Random random = new Random(seed);
      Samples noise = tone(2, 0, 1000);
      for (int n = 0; n < noise.values().length; n++) {
        noise.values()[n] = (float) (0.1 * random.nextGaussian());
      }
      assertThat(refusal(noise).flaw()).isIn(Flaw.OFF_FREQUENCY, Flaw.DISTORTED, Flaw.UNSTEADY);
    }
  }

  private static UnfitTone refusal(Samples recording) {
    UnfitTone unfit = catchThrowableOfType(UnfitTone.class, () -> read(recording));
    assertThat(unfit).as("the tone should have been refused").isNotNull();
    return unfit;
  }

  private static ToneReading read(Samples recording) throws UnfitTone {
    return ToneReading.of(recording, 1, 1000, SETTINGS);
  }

  private static Samples tone(double seconds, double amplitude, double hz) {
    return shaped(seconds, hz, t -> amplitude);
  }

  private static Samples shaped(double seconds, double hz, DoubleUnaryOperator amplitudeAtSecond) {
    float[] values = new float[(int) Math.round(seconds * RATE)];
    for (int n = 0; n < values.length; n++) {
      double t = n / RATE;
      values[n] = (float) (amplitudeAtSecond.applyAsDouble(t) * Math.sin(2 * Math.PI * hz * t));
    }
    return new Samples(values, RATE);
  }

  private static Samples noisy(Samples tone, double sigma) {
    Random random = new Random(7);
    for (int n = 0; n < tone.values().length; n++) {
      tone.values()[n] += (float) (sigma * random.nextGaussian());
    }
    return tone;
  }
}
