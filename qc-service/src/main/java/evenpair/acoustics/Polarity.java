package evenpair.acoustics;

/**
 * Whether two responses swing the same way.
 *
 * <p>The sign of an impulse response's largest sample is fragile behind crossovers; the sign of the
 * largest cross-correlation in a band is not.
 */
public final class Polarity {
  /**
   * Largest lag searched, seconds: the two arrivals were found on their own peaks and need not
   * agree better.
   */
  private static final double MAX_LAG_SECONDS = 0.5e-3;

  private static final int LAGS_PER_PERIOD = 32;

  private Polarity() {}

  /**
   * The largest (by magnitude) normalised cross-correlation of two complex responses in a band,
   * over lags τ of ±0.5 ms: r(τ) = Re Σ w·A·B*·e^(j2πfτ) / √(Σ w·|A|² · Σ w·|B|²). The weight w is
   * the grid point's bandwidth (∝ f on this logarithmic grid) times a zero-phase band-pass: a
   * half-cosine in log f over the outer eighth at each end.
   *
   * <p>Only the grid's points are used, so that stored 32-bit curves suffice; levels' offsets
   * cancel.
   *
   * @param levelA dB
   * @param phaseA 241 phases in degrees, relative to that response's own arrival
   * @param levelB dB
   * @param phaseB 241 phases in degrees
   * @param band holds three grid points at least, all present in both curves
   * @return r in −1 … 1; below 0: reversed. Near 0 the responses are too unlike to tell
   * @throws IllegalArgumentException if the band is too narrow or a phase in it is missing
   * @throws IllegalStateException if a level in the band is absent
   */
  public static double correlation(
      Curve levelA, double[] phaseA, Curve levelB, double[] phaseB, Band band) {
    int first = band.firstIndex();
    int points = band.points();
    if (points < 3) {
      throw new IllegalArgumentException(
          "polarity needs a band of three grid points at least, got " + band);
    }
    double[] real = new double[points];
    double[] imaginary = new double[points];
    double powerA = 0;
    double powerB = 0;
    double meanA = levelA.mean(band);
    double meanB = levelB.mean(band);
    for (int k = 0; k < points; k++) {
      int i = first + k;
      double weight = Grid.hz(i) * taper(k, points);
      double a = Math.pow(10, (levelA.at(i) - meanA) / 20);
      double b = Math.pow(10, (levelB.at(i) - meanB) / 20);
      double angle = Math.toRadians(present(phaseA, i) - present(phaseB, i));
      real[k] = weight * a * b * Math.cos(angle);
      imaginary[k] = weight * a * b * Math.sin(angle);
      powerA += weight * a * a;
      powerB += weight * b * b;
    }
    return largest(real, imaginary, first) / Math.sqrt(powerA * powerB);
  }

  private static double largest(double[] real, double[] imaginary, int first) {
    double step = 1 / (LAGS_PER_PERIOD * Grid.hz(first + real.length - 1));
    int steps = (int) Math.ceil(MAX_LAG_SECONDS / step);
    double best = 0;
    for (int s = -steps; s <= steps; s++) {
      double sum = 0;
      double lag = MAX_LAG_SECONDS * s / steps;
      for (int k = 0; k < real.length; k++) {
        double turn = 2 * Math.PI * Grid.hz(first + k) * lag;
        sum += real[k] * Math.cos(turn) - imaginary[k] * Math.sin(turn);
      }
      if (Math.abs(sum) > Math.abs(best)) {
        best = sum;
      }
    }
    return best;
  }

  /** Half-cosine over the outer eighth of the points at each end, never 0. */
  private static double taper(int k, int points) {
    double edge = Math.max(1, points / 8.0);
    double fromEnd = Math.min(k, points - 1 - k) + 0.5;
    return fromEnd >= edge ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * fromEnd / edge);
  }

  private static double present(double[] phase, int index) {
    if (!Double.isFinite(phase[index])) {
      throw new IllegalArgumentException("no phase at " + Grid.label(index) + " Hz");
    }
    return phase[index];
  }
}
