package evenpair.statistics;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.math3.analysis.solvers.BrentSolver;
import org.apache.commons.math3.distribution.BinomialDistribution;
import org.apache.commons.math3.distribution.ChiSquaredDistribution;
import org.apache.commons.math3.special.Gamma;

/**
 * Statistical tolerance intervals: k such that x̄ + k·s, or x̄ ± k·s, holds a share p of a normal
 * population at a confidence γ, both exact, by integration over the mean and the standard deviation
 * of the sample; and how many units make the sample's own extremes do that whatever the
 * distribution (S. S. Wilks, Annals of Mathematical Statistics 12 (1941) 91–96, from memory).
 * Source of the definitions: ISO 16269-6 (from memory).
 */
public final class ToleranceFactor {
  private static final int STEPS = 2000;
  private static final double ACCURACY = 1e-9;
  private static final double MOST = 1e4;

  private ToleranceFactor() {}

  /**
   * @param n values, 2 upwards
   * @param share p, between 0 and 1
   * @param confidence γ, between 0 and 1
   * @return k of x̄ + k·s: P(x̄ + k·s ≥ z_p) = ∫Φ(√n·(k·s − z_p))·f(s)ds = γ
   */
  public static double oneSided(int n, double share, double confidence) {
    require(n, share, confidence);
    double quantile = Normal.quantile(share);
    double root = Math.sqrt(n);
    return solve(
        k -> overDeviation(n - 1, s -> Normal.below(root * (k * s - quantile))) - confidence);
  }

  /**
   * Ranges as for one side.
   *
   * @return k of x̄ ± k·s: P(s ≥ r(x̄)/k) over x̄, with Φ(x̄ + r) − Φ(x̄ − r) = p
   */
  public static double twoSided(int n, double share, double confidence) {
    require(n, share, confidence);
    double root = Math.sqrt(n);
    int steps = 200;
    double step = 8.5 / steps;
    double[] half = new double[steps + 1];
    for (int i = 0; i <= steps; i++) {
      half[i] = halfWidth(i * step / root, share);
    }
    ChiSquaredDistribution chi = new ChiSquaredDistribution(null, n - 1);
    return solve(
        k -> {
          double sum = 0;
          for (int i = 0; i <= steps; i++) {
            double reach = half[i] / k;
            double holds = 1 - chi.cumulativeProbability((n - 1) * reach * reach);
            sum += (i == 0 ? 1 : 2) * Normal.density(i * step) * holds;
          }
          return sum * step - confidence;
        });
  }

  /**
   * @return least n whose largest value lies above a share p of the population at confidence γ: 1 −
   *     pⁿ ≥ γ
   */
  public static int unitsForLargest(double share, double confidence) {
    require(2, share, confidence);
    int n = 1;
    while (1 - Math.pow(share, n) < confidence) {
      n++;
    }
    return n;
  }

  /**
   * @return least n whose smallest and largest value hold a share p between them at confidence γ
   */
  public static int unitsForBoth(double share, double confidence) {
    require(2, share, confidence);
    int n = 2;
    while (new BinomialDistribution(null, n, share).cumulativeProbability(n - 2) < confidence) {
      n++;
    }
    return n;
  }

  /** Trapezoidal sum in u = ln s, in which the density falls off at both ends. */
  private static double overDeviation(int freedom, DoubleUnaryOperator value) {
    double half = freedom / 2.0;
    double constant = Math.log(2) + half * Math.log(half) - Gamma.logGamma(half);
    double low = -12.0 / Math.sqrt(freedom) - 12;
    double high = 6 / Math.sqrt(freedom);
    double step = (high - low) / STEPS;
    double sum = 0;
    for (int i = 0; i <= STEPS; i++) {
      double u = low + i * step;
      double density = Math.exp(constant + freedom * u - half * Math.exp(2 * u));
      sum += density * value.applyAsDouble(Math.exp(u));
    }
    return sum * step;
  }

  private static double halfWidth(double centre, double share) {
    return new BrentSolver(ACCURACY)
        .solve(
            200, r -> Normal.below(centre + r) - Normal.below(centre - r) - share, 0, centre + 40);
  }

  private static double solve(DoubleUnaryOperator excess) {
    return new BrentSolver(ACCURACY).solve(200, excess::applyAsDouble, 1e-6, MOST);
  }

  private static void require(int n, double share, double confidence) {
    if (n < 2 || !(share > 0 && share < 1) || !(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException(
          "needs two values, and share and confidence between 0 and 1; was %d, %s, %s"
              .formatted(n, share, confidence));
    }
  }
}
