package evenpair.statistics;

import java.util.Arrays;

/**
 * Control chart of single values with their moving range.
 *
 * <p>Limits: mean ± 3·MR̄/d₂ with d₂(2) = 2/√π, the mean of |x − y| of two standard normal numbers;
 * upper limit of the moving range MR̄·(1 + 3·d₃/d₂) with d₃(2) = √(2 − 4/π), its standard
 * deviation. Both are closed forms, worked out here.
 *
 * @param mean of all values
 * @param meanMovingRange MR̄
 */
public record IndividualsChart(double mean, double meanMovingRange) {
  private static final double D2 = 2 / Math.sqrt(Math.PI);
  private static final double D3 = Math.sqrt(2 - 4 / Math.PI);

  /**
   * @param values in the order measured, two at least, finite
   * @throws IllegalArgumentException if there are fewer or one is not finite
   */
  public static IndividualsChart of(double... values) {
    if (values.length < 2) {
      throw new IllegalArgumentException(
          "a moving range needs two values, was given " + values.length);
    }
    if (!Arrays.stream(values).allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("values must be finite");
    }
    double ranges = 0;
    for (int i = 1; i < values.length; i++) {
      ranges += Math.abs(values[i] - values[i - 1]);
    }
    return new IndividualsChart(
        Arrays.stream(values).average().orElseThrow(), ranges / (values.length - 1));
  }

  /**
   * @return MR̄/d₂, the standard deviation from one value to the next
   */
  public double sigma() {
    return meanMovingRange / D2;
  }

  /**
   * How many degrees of freedom {@link #sigma} is worth: the ν of a χ with the same coefficient of
   * variation, 1/(2·cv²). Var(MR̄) = ((n−1)·d₃² + 2(n−2)·c)/(n−1)² for n values, where c =
   * (4/π)·(π/12 + √3/2) − 4/π is the covariance of neighbouring ranges: they share a value, so that
   * their differences are correlated by −½. About 0.61·(n − 1).
   *
   * @param n values behind the chart, 2 upwards
   */
  public static double freedom(int n) {
    double shared = 4 / Math.PI * (Math.PI / 12 + Math.sqrt(3) / 2) - 4 / Math.PI;
    double ranges = n - 1.0;
    double variance = (ranges * D3 * D3 + 2 * (ranges - 1) * shared) / (ranges * ranges);
    return D2 * D2 / (2 * variance);
  }

  /**
   * @return the values against the limits
   */
  public ControlChart values(double... values) {
    return ControlChart.level(values, mean, lower(), upper());
  }

  /**
   * @return the moving ranges of values against their limit, one fewer than values
   */
  public ControlChart movingRanges(double... values) {
    double[] ranges = new double[Math.max(0, values.length - 1)];
    for (int i = 0; i < ranges.length; i++) {
      ranges[i] = Math.abs(values[i + 1] - values[i]);
    }
    return ControlChart.level(ranges, meanMovingRange, 0, movingRangeUpper());
  }

  public double lower() {
    return mean - 3 * sigma();
  }

  public double upper() {
    return mean + 3 * sigma();
  }

  /**
   * @return upper limit of the moving range; its lower one is 0
   */
  public double movingRangeUpper() {
    return meanMovingRange * (1 + 3 * D3 / D2);
  }

  /**
   * @return true if the value lies outside the limits
   */
  public boolean signals(double value) {
    return value < lower() || value > upper();
  }
}
