package evenpair.statistics;

import org.apache.commons.math3.distribution.FDistribution;

/** Tail of F's distribution. */
final class FDistributionTail {
  private FDistributionTail() {}

  /**
   * @param f ratio of two mean squares, 0 upwards; infinite if the second is 0
   * @return P(F > f); NaN for NaN
   */
  static double above(double f, int numeratorFreedom, int denominatorFreedom) {
    if (Double.isNaN(f)) {
      return Double.NaN;
    }
    if (Double.isInfinite(f)) {
      return 0;
    }
    return 1
        - new FDistribution(null, numeratorFreedom, denominatorFreedom).cumulativeProbability(f);
  }
}
