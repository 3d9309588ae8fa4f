package evenpair.demo.line;

import evenpair.tolerance.Channel;
import java.util.random.RandomGenerator;

/**
 * A sound calibrator put on a bench's microphones, one after the other: a tone of a stated level.
 */
public final class Calibrator {
  /** Stated level, dB re 20 µPa; 1.00237 Pa. */
  public static final double LEVEL_DB = 94;

  /** Stated frequency, Hz. */
  public static final double FREQUENCY_HZ = 1000;

  /** The real one turns a little slower than stated. */
  private static final double TRUE_HZ = 999.7;

  private static final double SECOND_HARMONIC = 0.001;
  private static final double SECONDS = 2;

  private Calibrator() {}

  /**
   * @return what that microphone records of the tone: a mono WAV of 24-bit integers
   */
  public static byte[] tone(Bench bench, Channel channel, int rateHz, RandomGenerator random) {
    double peakPascal = Math.sqrt(2) * 20e-6 * Math.pow(10, LEVEL_DB / 20);
    double phase = 2 * Math.PI * random.nextDouble();
    double[] samples =
        Background.pascal((int) (SECONDS * rateHz), rateHz, bench.backgroundDb(), random);
    for (int n = 0; n < samples.length; n++) {
      double angle = 2 * Math.PI * TRUE_HZ * n / rateHz + phase;
      samples[n] += peakPascal * (Math.sin(angle) + SECOND_HARMONIC * Math.sin(2 * angle));
      samples[n] /= bench.pascalPerFullScale(channel);
    }
    return Pcm24.mono(samples, rateHz);
  }
}
