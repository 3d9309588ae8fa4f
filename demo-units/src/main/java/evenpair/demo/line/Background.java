package evenpair.demo.line;

import java.util.random.RandomGenerator;

/**
 * A room's noise as it leaks into an ear simulator: white noise through a first-order low-pass at
 * 150 Hz, and a tenth of that power white (microphones and preamplifiers).
 */
final class Background {
  private static final double CORNER_HZ = 150;
  private static final double WHITE_SHARE = 0.1;

  private Background() {}

  /**
   * @param levelDb r.m.s. level over all frequencies, dB re 20 µPa
   * @return sound pressure, Pa
   */
  static double[] pascal(int samples, double rateHz, double levelDb, RandomGenerator random) {
    double rms = 20e-6 * Math.pow(10, levelDb / 20);
    double keep = Math.exp(-2 * Math.PI * CORNER_HZ / rateHz);
    // A first-order recursion y = keep·y + x has the power 1/(1 − keep²) for white x of power 1.
    double low = rms * Math.sqrt((1 - WHITE_SHARE) * (1 - keep * keep));
    double white = rms * Math.sqrt(WHITE_SHARE);
    double[] noise = new double[samples];
    double state = random.nextGaussian() / Math.sqrt(1 - keep * keep);
    for (int n = 0; n < samples; n++) {
      state = keep * state + random.nextGaussian();
      noise[n] = low * state + white * random.nextGaussian();
    }
    return noise;
  }
}
