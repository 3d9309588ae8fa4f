package evenpair.acoustics;

import evenpair.acoustics.UnusableCapture.Flaw;

/**
 * Looks for samples lost, repeated or replaced while the sweep plays.
 *
 * <p>A sine of angular frequency ω obeys x[n] = 2·cos ω·x[n−1] − x[n−2]. What a capture leaves of
 * that, at the frequency being played, is small and even (tails of earlier frequencies, harmonics,
 * noise); a jump stands out of it by its own height. Jumps are compared with the local amplitude
 * and with the local mean of what is left, in blocks of 20 ms. A gap that begins and ends near zero
 * crossings makes no jump: runs of equal samples are looked for as well. The numbers are common
 * practice.
 */
final class DropOuts {
  private static final double BLOCK_SECONDS = 0.020;

  /** A jump counts from this part of the local amplitude on. */
  private static final double JUMP_OF_AMPLITUDE = 0.25;

  /**
   * Above 300 Hz a smaller one counts too, if it stands alone (or both edges of a gap do): a unit's
   * own rattle comes again at every period, six times a block and more.
   */
  private static final double FINE_JUMP_OF_AMPLITUDE = 0.1;

  private static final double FINE_FROM_HZ = 300;
  private static final int EDGES_OF_A_GAP = 2;
  private static final double APART_SECONDS = 0.0005;

  /**
   * Gaussian noise stays below 6 times its mean magnitude over the length of a sweep, a sine below
   * 1.6.
   */
  private static final double JUMP_OF_MEAN_REST = 10;

  /** Jumps below this part of the capture's peak lie where the path passes next to nothing. */
  private static final double JUMP_OF_PEAK = 0.01;

  private static final double LEAST_RUN_SECONDS = 0.001;

  /**
   * Beside a gap the signal must be clearly there: this part of the peak, and so many of the file's
   * steps.
   */
  private static final double ALIVE_OF_PEAK = 0.01;

  private static final int ALIVE_STEPS = 8;

  private static final double BESIDE_SECONDS = 0.005;

  private final double rateHz;
  private final int block;
  private final int from;
  private final int to;
  private final int beside;
  private final int apart;
  private final int fineFrom;
  private final double[] twiceCosine;
  private final int[] allowedRun;

  DropOuts(Sweep sweep) {
    rateHz = sweep.rateHz();
    block = (int) Math.round(BLOCK_SECONDS * rateHz);
    beside = (int) Math.round(BESIDE_SECONDS * rateHz);
    apart = (int) Math.round(APART_SECONDS * rateHz);
    fineFrom = (int) (sweep.rate() * Math.log(FINE_FROM_HZ / sweep.fromHz()) * rateHz);
    int length = SweepSignal.count(sweep.seconds(), sweep);
    int fade = SweepSignal.count(sweep.fadeSeconds(), sweep);
    from = Math.max(2, fade);
    to = length - fade;
    twiceCosine = new double[length];
    allowedRun = new int[length];
    for (int n = 0; n < length; n++) {
      double hz = SweepSignal.frequencyAt(sweep, n / rateHz);
      twiceCosine[n] = 2 * Math.cos(2 * Math.PI * hz / rateHz);
      allowedRun[n] = (int) Math.ceil(Math.max(LEAST_RUN_SECONDS, 0.5 / hz) * rateHz);
    }
  }

  /**
   * @param samples a capture that holds the whole sweep
   * @param arrival index of the sweep's first sample in it
   * @param peak the capture's largest |sample|
   * @throws UnusableCapture DROP_OUT at the first jump or gap
   */
  void check(float[] samples, int arrival, double peak) throws UnusableCapture {
    for (int start = from; start < to; start += block) {
      checkBlock(samples, arrival, start, Math.min(to, start + block), peak);
    }
    checkRuns(samples, arrival, peak);
  }

  private void checkBlock(float[] samples, int arrival, int start, int end, double peak)
      throws UnusableCapture {
    double sumOfRest = 0;
    double sum = 0;
    double worst = 0;
    for (int n = start; n < end; n++) {
      double rest = rest(samples, arrival, n);
      sumOfRest += rest;
      sum += Math.abs(samples[arrival + n]);
      worst = Math.max(worst, rest);
    }
    double amplitude = Math.PI / 2 * sum / (end - start);
    double least = Math.max(JUMP_OF_MEAN_REST * sumOfRest / (end - start), JUMP_OF_PEAK * peak);
    boolean plain = worst > Math.max(least, JUMP_OF_AMPLITUDE * amplitude);
    boolean fine = start >= fineFrom && worst > Math.max(least, FINE_JUMP_OF_AMPLITUDE * amplitude);
    if (plain || fine) {
      refuse(samples, arrival, start, end, worst, amplitude, plain);
    }
  }

  /**
   * Names the first jump of at least half the worst one's size; small ones only if they do not
   * recur.
   */
  private void refuse(
      float[] samples,
      int arrival,
      int start,
      int end,
      double worst,
      double amplitude,
      boolean plain)
      throws UnusableCapture {
    int first = -1;
    int last = -1;
    int jumps = 0;
    for (int n = start; n < end; n++) {
      if (rest(samples, arrival, n) >= 0.5 * worst) {
        first = first < 0 ? n : first;
        jumps += last < 0 || n - last > apart ? 1 : 0;
        last = n;
      }
    }
    if (plain || jumps <= EDGES_OF_A_GAP) {
      double allowed = plain ? JUMP_OF_AMPLITUDE : FINE_JUMP_OF_AMPLITUDE;
      throw new UnusableCapture(
          Flaw.DROP_OUT, (arrival + first) / rateHz, worst / amplitude, allowed);
    }
  }

  private double rest(float[] samples, int arrival, int n) {
    int i = arrival + n;
    return Math.abs(samples[i] - twiceCosine[n] * samples[i - 1] + samples[i - 2]);
  }

  private void checkRuns(float[] samples, int arrival, double peak) throws UnusableCapture {
    int run = 1;
    for (int n = from; n < to; n++) {
      int i = arrival + n;
      if (samples[i] == samples[i - 1]) {
        run++;
        continue;
      }
      int begin = i - run;
      if (run > allowedRun[Math.max(0, n - run)] && isAlive(samples, begin, i, peak)) {
        throw new UnusableCapture(
            Flaw.DROP_OUT, begin / rateHz, run / rateHz, allowedRun[Math.max(0, n - run)] / rateHz);
      }
      run = 1;
    }
  }

  private boolean isAlive(float[] samples, int begin, int end, double peak) {
    double least = Math.max(ALIVE_OF_PEAK * peak, ALIVE_STEPS * smallestStep(samples));
    return largest(samples, begin - beside, begin) >= least
        && largest(samples, end, end + beside) >= least;
  }

  private static double largest(float[] samples, int from, int to) {
    float largest = 0;
    for (int n = Math.max(0, from); n < Math.min(to, samples.length); n++) {
      largest = Math.max(largest, Math.abs(samples[n]));
    }
    return largest;
  }

  /** The smallest sample that is not zero: a file's step, as far as it can be seen. */
  private static double smallestStep(float[] samples) {
    float smallest = Float.MAX_VALUE;
    for (float sample : samples) {
      float size = Math.abs(sample);
      smallest = size > 0 ? Math.min(smallest, size) : smallest;
    }
    return smallest;
  }
}
