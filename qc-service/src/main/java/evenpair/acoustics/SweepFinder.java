package evenpair.acoustics;

import evenpair.acoustics.UnusableCapture.Flaw;

/**
 * Finds the sweep in a capture: deconvolves it block by block until the response's peak stands out.
 * The first block decides for every capture that may be judged; later blocks only serve to say
 * where the sweep is instead. Memory is one block's, however long the capture.
 */
final class SweepFinder {
  /**
   * Peak over the r.m.s. of what surrounds it. Noise of 131072 samples reaches 13 dB, a recorded
   * tone less; a sweep 10 dB below white noise still reaches 30 dB (tried on rendered signals).
   */
  private static final double LEAST_RATIO_DB = 20;

  /** The surroundings begin after this much decay, and before the harmonic of this order. */
  private static final double DECAY_SECONDS = 0.350;

  private static final int HIGHEST_HARMONIC = 32;

  private final Sweep sweep;
  private final InverseFilter inverse;
  private final int transform;
  private final int lead;
  private final int active;
  private final int block;

  /**
   * @param block samples deconvolved at a time, not more than the transform
   * @param transform length of the transform
   */
  SweepFinder(Sweep sweep, InverseFilter inverse, int block, int transform) {
    this.sweep = sweep;
    this.inverse = inverse;
    this.block = block;
    this.transform = transform;
    lead = SweepSignal.count(sweep.leadSeconds(), sweep);
    active = SweepSignal.count(sweep.seconds(), sweep);
  }

  /**
   * A sweep that was found.
   *
   * @param impulse the block's circular impulse response
   * @param peak index of its peak
   * @param arrival index in the capture at which the sweep begins; below 0 if the capture began
   *     later
   */
  record Found(double[] impulse, int peak, int arrival) {}

  /**
   * @throws UnusableCapture NO_SWEEP if nothing stands out anywhere
   */
  Found find(float[] samples) throws UnusableCapture {
    double bestDb = Double.NEGATIVE_INFINITY;
    double bestAt = 0;
    int step = Math.max(1, block - active);
    for (int offset = 0; offset == 0 || offset + active / 2 < samples.length; offset += step) {
      double[] impulse = deconvolved(samples, offset);
      int peak = peak(impulse);
      int arrival = offset + unwrapped(peak, Math.min(block, samples.length - offset));
      double ratio = ratioDb(impulse, peak);
      if (ratio >= LEAST_RATIO_DB) {
        return new Found(impulse, peak, arrival);
      }
      if (ratio > bestDb) {
        bestDb = ratio;
        bestAt = Math.max(0, arrival / sweep.rateHz());
      }
    }
    throw new UnusableCapture(Flaw.NO_SWEEP, bestAt, bestDb, LEAST_RATIO_DB);
  }

  private double[] deconvolved(float[] samples, int offset) {
    double[] work = new double[transform];
    int end = Math.min(block, samples.length - offset);
    for (int n = 0; n < end; n++) {
      work[n] = samples[offset + n];
    }
    inverse.deconvolve(work);
    return work;
  }

  private static int peak(double[] impulse) {
    int best = 0;
    double largest = -1;
    for (int n = 0; n < impulse.length; n++) {
      double size = Math.abs(impulse[n]);
      if (size > largest) {
        largest = size;
        best = n;
      }
    }
    return best;
  }

  /**
   * Of the places that one circular index may mean, the one at which more of the sweep lies inside
   * the block.
   */
  private int unwrapped(int peak, int length) {
    int late = peak + lead;
    int early = late - transform;
    return overlap(early, length) > overlap(late, length) ? early : late;
  }

  private int overlap(int arrival, int length) {
    return Math.min(length, arrival + active) - Math.max(0, arrival);
  }

  private double ratioDb(double[] impulse, int peak) {
    int before = (int) (sweep.rate() * Math.log(HIGHEST_HARMONIC) * sweep.rateHz());
    int after = (int) (DECAY_SECONDS * sweep.rateHz());
    int count = Math.max(transform / 4, transform - before - after);
    double sum = 0;
    for (int n = 0; n < count; n++) {
      double value = impulse[(peak + after + n) & (transform - 1)];
      sum += value * value;
    }
    double largest = impulse[peak] * impulse[peak];
    // a lone sweep without any noise has nothing around it: twice the mantissa's digits, not
    // infinity
    return 10 * Math.log10(largest / Math.max(sum / count, largest * 0x1p-104));
  }
}
