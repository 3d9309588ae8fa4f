package evenpair.acoustics;

import evenpair.acoustics.UnusableCapture.Flaw;

/**
 * Finds the sweep in a capture: deconvolves it block by block until most frequencies arrive
 * together. The first block decides for every capture that may be judged; later blocks only serve
 * to say where the sweep is instead. Memory is one block's, however long the capture.
 */
final class SweepFinder {
  /**
   * So many octaves between 100 Hz and 16 kHz must arrive together. Another stimulus comes out of
   * the deconvolution as a chirp, at least 9 ms an octave if its duration is off by 8 %: half an
   * octave together. Noise has a tenth of an octave together, a click less than half (rendered
   * signals).
   */
  private static final double LEAST_OCTAVES = 1.5;

  private final Sweep sweep;
  private final InverseFilter inverse;
  private final ResponseSpectrum spectrum;
  private final int transform;
  private final int lead;
  private final int active;
  private final int block;

  /**
   * @param block samples deconvolved at a time, not more than the transform
   * @param transform length of the transform
   */
  SweepFinder(
      Sweep sweep, InverseFilter inverse, ResponseSpectrum spectrum, int block, int transform) {
    this.sweep = sweep;
    this.inverse = inverse;
    this.spectrum = spectrum;
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
   * @param response what the window around the peak holds
   * @param arrival index in the capture at which the sweep begins; below 0 if the capture began
   *     later
   */
  record Found(double[] impulse, int peak, ResponseSpectrum.Measured response, int arrival) {}

  /**
   * @throws UnusableCapture NO_SWEEP if nothing arrives together anywhere
   */
  Found find(float[] samples) throws UnusableCapture {
    double most = -1;
    double mostAt = 0;
    int step = Math.max(1, block - active);
    for (int offset = 0; offset == 0 || offset + active / 2 < samples.length; offset += step) {
      double[] impulse = deconvolved(samples, offset);
      int peak = peak(impulse);
      int arrival = offset + unwrapped(peak, Math.min(block, samples.length - offset));
      ResponseSpectrum.Measured response = spectrum.measure(impulse, peak);
      if (response.octavesTogether() >= LEAST_OCTAVES) {
        return new Found(impulse, peak, response, arrival);
      }
      if (response.octavesTogether() > most) {
        most = response.octavesTogether();
        mostAt = Math.max(0, arrival / sweep.rateHz());
      }
    }
    throw new UnusableCapture(Flaw.NO_SWEEP, mostAt, most, LEAST_OCTAVES);
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
}
