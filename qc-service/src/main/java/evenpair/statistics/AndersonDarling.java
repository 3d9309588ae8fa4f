package evenpair.statistics;

import java.util.Arrays;

/**
 * Whether a sample can be normal, with mean and standard deviation estimated from it: A² = −n −
 * (1/n)·Σ(2i − 1)·(ln Φ(z_i) + ln Φ(−z_(n+1−i))), z the sorted values less their mean over their
 * standard deviation; A* = A²·(1 + 0.75/n + 2.25/n²). The chance p of a larger A* for normal values
 * by the approximation in R. B. D'Agostino, M. A. Stephens, Goodness-of-Fit Techniques, Dekker
 * 1986, table 4.9 (from memory; reproduced by R's package nortest).
 *
 * @param n values
 * @param aSquared A²
 * @param adjusted A*
 * @param p chance that normal values give a larger one; beyond A* = 10, where the approximation
 *     ends, its value there, 3.7e-24, and the true one is smaller
 */
public record AndersonDarling(int n, double aSquared, double adjusted, double p) {
  /** The approximation of p is given from 8 values on. */
  public static final int LEAST = 8;

  private static final double END = 10;

  /**
   * @param values any order, finite
   */
  public static Finding<AndersonDarling> of(double... values) {
    int n = values.length;
    if (n < LEAST) {
      return new Finding.NotEnough<>(Finding.Lack.UNITS, n, LEAST);
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    Description found = Description.of(sorted);
    if (!(found.sd() > 0)) {
      return new Finding.NotEnough<>(Finding.Lack.SPREAD, 1, 2);
    }
    CompensatedSum sum = new CompensatedSum();
    for (int i = 0; i < n; i++) {
      double low = (sorted[i] - found.mean()) / found.sd();
      double high = (sorted[n - 1 - i] - found.mean()) / found.sd();
      sum.add((2 * i + 1) * (Normal.logBelow(low) + Normal.logBelow(-high)));
    }
    double squared = -n - sum.value() / n;
    double adjusted = squared * (1 + 0.75 / n + 2.25 / ((double) n * n));
    return new Finding.Found<>(new AndersonDarling(n, squared, adjusted, chance(adjusted)));
  }

  private static double chance(double a) {
    if (a < 0.2) {
      return 1 - Math.exp(-13.436 + 101.14 * a - 223.73 * a * a);
    }
    if (a < 0.34) {
      return 1 - Math.exp(-8.318 + 42.796 * a - 59.938 * a * a);
    }
    if (a < 0.6) {
      return Math.exp(0.9177 - 4.279 * a - 1.38 * a * a);
    }
    double within = Math.min(a, END);
    return Math.exp(1.2937 - 5.709 * within + 0.0186 * within * within);
  }
}
