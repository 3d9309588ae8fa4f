package evenpair.statistics;

import java.util.Arrays;

/**
 * Count, mean, standard deviation and percentiles of one sample.
 *
 * @param count how many numbers, 0 upwards
 * @param mean arithmetic mean; NaN without numbers
 * @param sd standard deviation with n − 1; NaN for fewer than two numbers
 * @param percentiles in the order asked for; NaN without numbers
 */
public record Description(int count, double mean, double sd, double[] percentiles) {
  /**
   * Describes a sample.
   *
   * <p>Mean m = Σx/n; standard deviation √((Σ(x − m)² − (Σ(x − m))²/n)/(n − 1)), all sums
   * compensated. The second term is 0 in exact arithmetic and takes out what the rounded mean
   * leaves; the one-pass formula Σx² − n·m² would lose every digit when the spread is small beside
   * the mean. Source: T. F. Chan, G. H. Golub, R. J. LeVeque, The American Statistician 37 (1983)
   * 242–247.
   *
   * @param values any order, finite; not changed
   * @param percents percentages at which percentiles are wanted, 0 … 100; see {@link Quantiles}
   * @throws IllegalArgumentException if a value is not finite or a percentage lies outside 0 … 100
   */
  public static Description of(double[] values, double... percents) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return ofSorted(sorted, sorted.length, percents);
  }

  static Description ofSorted(double[] sorted, int count, double... percents) {
    requireFinite(sorted, count);
    double mean = mean(sorted, count);
    double[] percentiles = new double[percents.length];
    for (int i = 0; i < percents.length; i++) {
      percentiles[i] = Quantiles.ofSorted(sorted, count, percents[i] / 100);
    }
    return new Description(count, mean, sd(sorted, count, mean), percentiles);
  }

  /** Rising order puts −∞ first, +∞ and NaN last, so that the ends tell of the whole. */
  private static void requireFinite(double[] sorted, int count) {
    if (count > 0 && !(Double.isFinite(sorted[0]) && Double.isFinite(sorted[count - 1]))) {
      throw new IllegalArgumentException(
          "a sample must be finite, has " + sorted[0] + " … " + sorted[count - 1]);
    }
  }

  private static double mean(double[] values, int count) {
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < count; i++) {
      sum.add(values[i]);
    }
    return sum.value() / count;
  }

  private static double sd(double[] values, int count, double mean) {
    if (count < 2) {
      return Double.NaN;
    }
    CompensatedSum squares = new CompensatedSum();
    CompensatedSum residual = new CompensatedSum();
    for (int i = 0; i < count; i++) {
      double distance = values[i] - mean;
      squares.add(distance * distance);
      residual.add(distance);
    }
    double left = residual.value() * residual.value() / count;
    return Math.sqrt(Math.max(0, squares.value() - left) / (count - 1));
  }
}
