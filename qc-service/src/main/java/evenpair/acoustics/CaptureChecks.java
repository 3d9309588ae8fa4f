package evenpair.acoustics;

import evenpair.acoustics.UnusableCapture.Flaw;

/** Looks at a capture's samples before anything is computed from them: silence and clipping. */
final class CaptureChecks {
  /**
   * As many neighbouring samples at full scale are clipping; one or two may be the signal's own.
   */
  private static final int CLIPPED_RUN = 3;

  /** Full scale in every format from 16 bit on: the largest positive 16-bit sample is 0.99997. */
  private static final float FULL_SCALE = 0.99995f;

  /** The largest positive 8-bit sample. */
  private static final float FULL_SCALE_8_BIT = 127 / 128f;

  /**
   * Below this (−120 dB re full scale, under the last bit of a 16-bit file) there is no signal at
   * all.
   */
  private static final double LEAST_PEAK = 1e-6;

  private CaptureChecks() {}

  /**
   * @return the largest |sample|
   * @throws UnusableCapture SILENT, or CLIPPED naming the first run of full-scale samples
   */
  static double level(Samples capture) throws UnusableCapture {
    float[] samples = capture.values();
    float peak = peak(samples);
    if (!(peak >= LEAST_PEAK)) {
      throw new UnusableCapture(Flaw.SILENT, 0, peak, LEAST_PEAK);
    }
    float fullScale =
        peak == FULL_SCALE_8_BIT && isEightBit(samples) ? FULL_SCALE_8_BIT : FULL_SCALE;
    if (peak >= fullScale) {
      refuseRuns(samples, fullScale, capture.rateHz());
    }
    return peak;
  }

  /**
   * @return the largest |sample|
   */
  static float peak(float[] samples) {
    float peak = 0;
    for (float sample : samples) {
      peak = Math.max(peak, Math.abs(sample));
    }
    return peak;
  }

  private static void refuseRuns(float[] samples, float fullScale, double rateHz)
      throws UnusableCapture {
    int run = 0;
    for (int n = 0; n <= samples.length; n++) {
      if (n < samples.length && Math.abs(samples[n]) >= fullScale) {
        run++;
      } else if (run >= CLIPPED_RUN) {
        throw new UnusableCapture(Flaw.CLIPPED, (n - run) / rateHz, run, CLIPPED_RUN - 1);
      } else {
        run = 0;
      }
    }
  }

  /** True if every sample stands on the steps of an 8-bit file. */
  private static boolean isEightBit(float[] samples) {
    for (float sample : samples) {
      if (sample * 128 != Math.rint(sample * 128)) {
        return false;
      }
    }
    return true;
  }
}
