package evenpair.stations;

import evenpair.acoustics.Samples;
import java.util.Arrays;

/**
 * Finds the part of a recording in which a tone stands: an operator starts the recording before the
 * calibrator sits and stops it after taking it off.
 */
final class SteadyPart {
  /**
   * 50 ms: 50 periods of 1 kHz, 12 of 250 Hz, so that a block's level does not depend on where the
   * periods fall.
   */
  private static final double BLOCK_SECONDS = 0.05;

  /**
   * A block belongs to the tone if its level is this near to the usual one: wide enough for a drift
   * to be seen and named.
   */
  private static final double NEAR_DB = 0.5;

  private SteadyPart() {}

  /**
   * The longest run of blocks of 50 ms whose r.m.s. lies within ±0.5 dB of the median of the
   * loudest second, without its first and last block where the run does not reach the recording's
   * ends (the tone may have begun or ended inside them).
   *
   * @return those samples; none if the recording is shorter than two blocks or silent
   */
  static Samples of(Samples recording) {
    int block = (int) Math.round(BLOCK_SECONDS * recording.rateHz());
    double[] rms = blockRms(recording.values(), block);
    double usual = medianOfLoudestSecond(rms);
    if (!(usual > 0)) {
      return new Samples(new float[0], recording.rateHz());
    }
    int bestFrom = 0;
    int bestTo = 0;
    int from = 0;
    for (int i = 0; i <= rms.length; i++) {
      if (i == rms.length || !(Math.abs(20 * Math.log10(rms[i] / usual)) <= NEAR_DB)) {
        if (i - from > bestTo - bestFrom) {
          bestFrom = from;
          bestTo = i;
        }
        from = i + 1;
      }
    }
    int first = bestFrom == 0 ? 0 : bestFrom + 1;
    int last = bestTo == rms.length ? bestTo : bestTo - 1;
    return new Samples(
        Arrays.copyOfRange(recording.values(), first * block, Math.max(first, last) * block),
        recording.rateHz());
  }

  private static double[] blockRms(float[] values, int block) {
    double[] rms = new double[values.length / block];
    for (int i = 0; i < rms.length; i++) {
      double squares = 0;
      for (int n = i * block; n < (i + 1) * block; n++) {
        squares += (double) values[n] * values[n];
      }
      rms[i] = Math.sqrt(squares / block);
    }
    return rms;
  }

  /**
   * A tone that can be used stands for a second or nearly so; its median is not moved by a few
   * blocks with a knock in them.
   */
  private static double medianOfLoudestSecond(double[] rms) {
    if (rms.length < 2) {
      return 0;
    }
    double[] sorted = rms.clone();
    Arrays.sort(sorted);
    int blocks = Math.min(rms.length, (int) Math.round(1 / BLOCK_SECONDS));
    return sorted[rms.length - 1 - blocks / 2];
  }
}
