package evenpair.statistics;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.FDistribution;

/**
 * Upper limits for Hotelling's T² of single rows. Source: N. D. Tracy, J. C. Young, R. L. Mason,
 * Multivariate control charts for individual observations, Journal of Quality Technology 24 (1992)
 * 88–95 (from memory). For one variable the limit of a member is Grubbs' and that of another row is
 * Student's.
 */
public final class TSquaredLimit {
  private TSquaredLimit() {}

  /**
   * For a row that is one of the n from which mean and covariance were found: (n − 1)²/n times the
   * 1 − α quantile of Beta(p/2, (n − p − 1)/2).
   *
   * @param n rows, p + 2 at least
   * @param p variables, or components, 1 upwards
   * @param alpha chance that a good row exceeds it, between 0 and 1
   */
  public static double ofMember(int n, int p, double alpha) {
    require(n, p, alpha);
    double quantile =
        new BetaDistribution(null, p / 2.0, (n - p - 1) / 2.0)
            .inverseCumulativeProbability(1 - alpha);
    return (n - 1.0) * (n - 1.0) / n * quantile;
  }

  /**
   * For a row that is none of the n: p(n + 1)(n − 1)/(n(n − p)) times the 1 − α quantile of F(p, n
   * − p). Ranges as for a member.
   */
  public static double ofAnother(int n, int p, double alpha) {
    require(n, p, alpha);
    double quantile = new FDistribution(null, p, n - p).inverseCumulativeProbability(1 - alpha);
    return p * (n + 1.0) * (n - 1.0) / (n * (double) (n - p)) * quantile;
  }

  private static void require(int n, int p, double alpha) {
    if (p < 1 || n < p + 2) {
      throw new IllegalArgumentException(
          "a limit for " + p + " variables needs " + (p + 2) + " rows, was given " + n);
    }
    if (!(alpha > 0 && alpha < 1)) {
      throw new IllegalArgumentException("a chance must lie between 0 and 1, was " + alpha);
    }
  }
}
