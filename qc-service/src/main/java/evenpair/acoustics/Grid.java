package evenpair.acoustics;

import java.util.stream.IntStream;

/**
 * The one frequency grid: f_n = 10^(n/80) Hz, n = 104 … 344, 241 exact points from 19.95 Hz to 19
 * 952.6 Hz.
 *
 * <p>Source: ISO 3, series R80 (80 steps a decade, which is 1/24 octave in base ten, IEC 61260-1).
 * An index here is the place in the grid, 0 … 240; 1000 Hz has index 136. Labels are the rounded
 * preferred numbers of R80.
 */
public final class Grid {
  /** Number of grid points. */
  public static final int POINTS = 241;

  private static final int FIRST_EXPONENT = 104;
  private static final int STEPS_PER_DECADE = 80;

  /** ISO 3 R80, one decade of rounded values. */
  private static final double[] R80 = {
    1.00, 1.03, 1.06, 1.09, 1.12, 1.15, 1.18, 1.22, 1.25, 1.28, 1.32, 1.36, 1.40, 1.45, 1.50, 1.55,
        1.60, 1.65, 1.70,
    1.75, 1.80, 1.85, 1.90, 1.95, 2.00, 2.06, 2.12, 2.18, 2.24, 2.30, 2.36, 2.43, 2.50, 2.58, 2.65,
        2.72, 2.80, 2.90,
    3.00, 3.07, 3.15, 3.25, 3.35, 3.45, 3.55, 3.65, 3.75, 3.87, 4.00, 4.12, 4.25, 4.37, 4.50, 4.62,
        4.75, 4.87, 5.00,
    5.15, 5.30, 5.45, 5.60, 5.80, 6.00, 6.15, 6.30, 6.50, 6.70, 6.90, 7.10, 7.30, 7.50, 7.75, 8.00,
        8.25, 8.50, 8.75,
    9.00, 9.25, 9.50, 9.75
  };

  private static final double[] HZ =
      IntStream.range(0, POINTS).mapToDouble(i -> exact(i)).toArray();

  private static final double[] LABELS =
      IntStream.range(0, POINTS).mapToDouble(i -> rounded(i)).toArray();

  private Grid() {}

  /**
   * @return the exact frequency of a grid point, Hz: 10^((104 + index)/80)
   */
  public static double hz(int index) {
    return HZ[index];
  }

  /**
   * @return all 241 exact frequencies in Hz, rising; a new array at each call
   */
  public static double[] frequencies() {
    return HZ.clone();
  }

  /**
   * @return the rounded R80 label of a grid point, Hz (20 for 19.95, 1000 for 1000)
   */
  public static double label(int index) {
    return LABELS[index];
  }

  private static double rounded(int index) {
    int exponent = FIRST_EXPONENT + index;
    double rounded = R80[exponent % STEPS_PER_DECADE] * Math.pow(10, exponent / STEPS_PER_DECADE);
    return Math.round(rounded * 100) / 100.0;
  }

  /**
   * @return the lower edge of the point's band, Hz: f·10^(−1/160)
   */
  public static double lowerEdge(int index) {
    return HZ[index] * Math.pow(10, -0.5 / STEPS_PER_DECADE);
  }

  /**
   * @return the upper edge of the point's band, Hz: f·10^(+1/160)
   */
  public static double upperEdge(int index) {
    return HZ[index] * Math.pow(10, 0.5 / STEPS_PER_DECADE);
  }

  /**
   * @param hz a frequency in hertz, above 0
   * @return the index of the grid point nearest in log frequency, held inside 0 … 240
   */
  public static int nearest(double hz) {
    if (!(hz > 0) || !Double.isFinite(hz)) {
      throw new IllegalArgumentException("frequency must be a finite number above 0 Hz, was " + hz);
    }
    long exponent = Math.round(Math.log10(hz) * STEPS_PER_DECADE);
    return (int) Math.max(0, Math.min(POINTS - 1, exponent - FIRST_EXPONENT));
  }

  private static double exact(int index) {
    return Math.pow(10, (FIRST_EXPONENT + index) / (double) STEPS_PER_DECADE);
  }
}
