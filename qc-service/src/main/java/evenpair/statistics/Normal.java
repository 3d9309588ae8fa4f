package evenpair.statistics;

import org.apache.commons.math3.distribution.NormalDistribution;
import org.apache.commons.math3.special.Erf;

/** The standard normal distribution. */
final class Normal {
  private static final NormalDistribution STANDARD = new NormalDistribution(null, 0, 1);

  /** Below this z the distribution function leaves the range of double. */
  private static final double FAR = -37;

  private Normal() {}

  static double density(double z) {
    return Math.exp(-z * z / 2) / Math.sqrt(2 * Math.PI);
  }

  static double below(double z) {
    return 0.5 * Erf.erfc(-z / Math.sqrt(2));
  }

  static double quantile(double probability) {
    return STANDARD.inverseCumulativeProbability(probability);
  }

  /** ln Φ(z); far below zero by the first terms of Mills' ratio. */
  static double logBelow(double z) {
    if (z > FAR) {
      return Math.log(below(z));
    }
    return -z * z / 2 - Math.log(-z * Math.sqrt(2 * Math.PI)) + Math.log1p(-1 / (z * z));
  }
}
