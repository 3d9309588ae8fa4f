package evenpair.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Points in order with the centre line and the limits at each.
 *
 * @param points what is plotted
 * @param centre centre line
 * @param lower lower control limit at each point; −∞ where the chart has none
 * @param upper upper control limit at each point; +∞ where the chart has none
 */
public record ControlChart(double[] points, double centre, double[] lower, double[] upper) {
  /** Whatever the limits are set by, this many units or groups are wanted. */
  public static final int LEAST_POINTS = 10;

  static ControlChart level(double[] points, double centre, double lower, double upper) {
    return new ControlChart(points, centre, filled(points, lower), filled(points, upper));
  }

  private static double[] filled(double[] like, double value) {
    double[] all = new double[like.length];
    Arrays.fill(all, value);
    return all;
  }

  /**
   * @return places of the points outside the limits
   */
  public int[] outside() {
    return IntStream.range(0, points.length)
        .filter(i -> points[i] < lower[i] || points[i] > upper[i])
        .toArray();
  }

  /**
   * @return distance of each point from the centre in standard deviations, for charts whose limits
   *     lie three of them away on both sides
   */
  public double[] inSigmas() {
    double[] z = new double[points.length];
    for (int i = 0; i < z.length; i++) {
      z[i] = 3 * (points[i] - centre) / (upper[i] - centre);
    }
    return z;
  }
}
