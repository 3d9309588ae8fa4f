package evenpair.statistics;

import org.apache.commons.math3.special.Gamma;

/**
 * Constants of Shewhart charts for subgroups of n normal values, worked out and not tabulated.
 *
 * <p>c₄ = √(2/(n−1))·Γ(n/2)/Γ((n−1)/2), the mean of s/σ. The range W of n standard normal values
 * has P(W ≤ w) = n·∫φ(x)·(Φ(x+w) − Φ(x))ⁿ⁻¹dx; d₂ = ∫P(W > w)dw is its mean and d₃ its standard
 * deviation, from E[W²] = 2·∫w·P(W > w)dw. The inner integral is a trapezoidal sum, which converges
 * faster than any power of the step for such a function; the outer one is Simpson's. The others
 * follow by their definitions. Names as in ISO 7870-2 (from memory).
 *
 * @param n values in a subgroup
 * @param c4 mean of the standard deviation ÷ σ
 * @param d2 mean of the range ÷ σ
 * @param d3 standard deviation of the range ÷ σ
 */
public record ChartConstants(int n, double c4, double d2, double d3) {
  private static final int MOST = 1000;
  private static final double STEP = 0.05;

  /** Beyond 9 standard deviations a density of 1e-18 is left. */
  private static final double REACH = 9;

  private static final int POINTS = (int) Math.round(2 * REACH / STEP);

  /**
   * @param n 2 … 1000
   */
  public static ChartConstants of(int n) {
    if (n < 2 || n > MOST) {
      throw new IllegalArgumentException("a subgroup holds 2 to " + MOST + " values, was " + n);
    }
    double c4 =
        Math.sqrt(2.0 / (n - 1))
            * Math.exp(Gamma.logGamma(n / 2.0) - Gamma.logGamma((n - 1) / 2.0));
    double[] below = new double[2 * POINTS + 1];
    for (int i = 0; i < below.length; i++) {
      below[i] = Normal.below(-REACH + i * STEP);
    }
    double mean = 0;
    double square = 0;
    for (int j = 0; j <= POINTS; j++) {
      double beyond = 1 - within(below, n, j);
      double weight = j == 0 || j == POINTS ? 1 : j % 2 == 1 ? 4 : 2;
      mean += weight * beyond;
      square += weight * 2 * j * STEP * beyond;
    }
    mean *= STEP / 3;
    square *= STEP / 3;
    return new ChartConstants(n, c4, mean, Math.sqrt(square - mean * mean));
  }

  private static double within(double[] below, int n, int steps) {
    double sum = 0;
    for (int i = 0; i <= POINTS; i++) {
      double x = -REACH + i * STEP;
      sum += Normal.density(x) * Math.pow(below[i + steps] - below[i], n - 1);
    }
    return Math.min(1, n * sum * STEP);
  }

  /** Means, limits from the mean range. */
  public double a2() {
    return 3 / (d2 * Math.sqrt(n));
  }

  /** Means, limits from the mean standard deviation. */
  public double a3() {
    return 3 / (c4 * Math.sqrt(n));
  }

  /** Standard deviations, lower limit from their mean; not below 0. */
  public double b3() {
    return Math.max(0, 1 - 3 * c5() / c4);
  }

  /** Standard deviations, upper limit from their mean. */
  public double b4() {
    return 1 + 3 * c5() / c4;
  }

  /** Standard deviations, lower limit from a known σ; not below 0. */
  public double b5() {
    return Math.max(0, c4 - 3 * c5());
  }

  /** Standard deviations, upper limit from a known σ. */
  public double b6() {
    return c4 + 3 * c5();
  }

  /** Ranges, lower limit from a known σ; not below 0. */
  public double upperCaseD1() {
    return Math.max(0, d2 - 3 * d3);
  }

  /** Ranges, upper limit from a known σ. */
  public double upperCaseD2() {
    return d2 + 3 * d3;
  }

  /** Ranges, lower limit from their mean; not below 0. */
  public double upperCaseD3() {
    return Math.max(0, 1 - 3 * d3 / d2);
  }

  /** Ranges, upper limit from their mean. */
  public double upperCaseD4() {
    return 1 + 3 * d3 / d2;
  }

  /** Single values, limits from the mean range. */
  public double e2() {
    return 3 / d2;
  }

  /** Standard deviation of s ÷ σ. */
  public double c5() {
    return Math.sqrt(1 - c4 * c4);
  }
}
