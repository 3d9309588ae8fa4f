package evenpair.acoustics;

import java.util.Arrays;

/**
 * A curve at any rising frequencies, to be brought to the grid. Where the source has two points or
 * more inside a grid band, the level is the mean power over the band (trapezoid over the points and
 * the band's edges); where it is coarser, the level is linear in dB over log f between its
 * neighbours. It is never extrapolated: a grid point outside the source is absent. A grid point
 * within 0.25 % of an end counts as that end: files write 20 for 19.95 Hz.
 */
public final class SourceCurve {
  private static final double ROUNDING = 0.0025;

  private final double[] hz;
  private final double[] db;

  /**
   * @param hz frequencies, two at least, finite, above 0, strictly rising
   * @param db one level for each, finite
   * @throws IllegalArgumentException if one of these does not hold
   */
  public SourceCurve(double[] hz, double[] db) {
    if (hz.length < 2 || hz.length != db.length) {
      throw new IllegalArgumentException(
          "a source curve needs two points at least and a level for each");
    }
    for (int k = 0; k < hz.length; k++) {
      boolean rising = hz[k] > (k == 0 ? 0 : hz[k - 1]) && Double.isFinite(hz[k]);
      if (!rising || !Double.isFinite(db[k])) {
        throw new IllegalArgumentException(
            "point " + k + " must rise and be finite: " + hz[k] + " Hz, " + db[k] + " dB");
      }
    }
    this.hz = hz.clone();
    this.db = db.clone();
  }

  /**
   * @return the lowest frequency, Hz
   */
  public double fromHz() {
    return hz[0];
  }

  /**
   * @return the highest frequency, Hz
   */
  public double toHz() {
    return hz[hz.length - 1];
  }

  /**
   * @return the curve on the grid, absent where the source does not reach
   */
  public Curve toGrid() {
    double[] level = new double[Grid.POINTS];
    for (int i = 0; i < level.length; i++) {
      level[i] = reaches(Grid.hz(i)) ? level(i) : Double.NaN;
    }
    return Curve.of(level);
  }

  /**
   * Phase at the grid frequencies: linear in f (a delay stays a delay) between source points, each
   * turned by whole turns to lie nearest to the one before.
   *
   * @param phaseDeg a phase in degrees for each source point
   * @return 241 phases in −180 … 180 degrees, NaN where absent
   */
  public double[] phaseToGrid(double[] phaseDeg) {
    double[] unwrapped = phaseDeg.clone();
    for (int k = 1; k < unwrapped.length; k++) {
      unwrapped[k] = unwrapped[k - 1] + Math.IEEEremainder(phaseDeg[k] - phaseDeg[k - 1], 360);
    }
    double[] phase = new double[Grid.POINTS];
    for (int i = 0; i < phase.length; i++) {
      double f = held(Grid.hz(i));
      int k = before(f);
      double part = (f - hz[k]) / (hz[k + 1] - hz[k]);
      double turned = unwrapped[k] + part * (unwrapped[k + 1] - unwrapped[k]);
      phase[i] = reaches(Grid.hz(i)) ? Math.IEEEremainder(turned, 360) : Double.NaN;
    }
    return phase;
  }

  private boolean reaches(double f) {
    return f >= fromHz() * (1 - ROUNDING) && f <= toHz() * (1 + ROUNDING);
  }

  private double held(double f) {
    return Math.max(fromHz(), Math.min(toHz(), f));
  }

  private double level(int i) {
    double from = held(Grid.lowerEdge(i));
    double to = held(Grid.upperEdge(i));
    int first = insertion(from);
    int beyond = insertion(to);
    return beyond - first < 2 ? interpolated(held(Grid.hz(i))) : powerMean(from, to, first, beyond);
  }

  private double powerMean(double from, double to, int first, int beyond) {
    double area = 0;
    double f = from;
    double power = power(interpolated(from));
    for (int k = first; k <= beyond; k++) {
      double next = k < beyond ? hz[k] : to;
      double nextPower = power(k < beyond ? db[k] : interpolated(to));
      area += 0.5 * (power + nextPower) * (next - f);
      f = next;
      power = nextPower;
    }
    return 10 * Math.log10(area / (to - from));
  }

  private double interpolated(double f) {
    int k = before(f);
    return db[k] + (db[k + 1] - db[k]) * Math.log(f / hz[k]) / Math.log(hz[k + 1] / hz[k]);
  }

  /**
   * @return k with hz[k] ≤ f ≤ hz[k+1]
   */
  private int before(double f) {
    int place = Arrays.binarySearch(hz, f);
    int k = place >= 0 ? place : -place - 2;
    return Math.max(0, Math.min(hz.length - 2, k));
  }

  /**
   * @return the number of source points below f
   */
  private int insertion(double f) {
    int place = Arrays.binarySearch(hz, f);
    return place >= 0 ? place : -place - 1;
  }

  private static double power(double level) {
    return Math.pow(10, level / 10);
  }
}
