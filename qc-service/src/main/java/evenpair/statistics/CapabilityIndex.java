package evenpair.statistics;

import org.apache.commons.math3.distribution.ChiSquaredDistribution;

/**
 * An estimated capability index with its confidence.
 *
 * <p>Of a spread alone (C_p): Ĉ·√(χ²_α/ν), since ν·σ̂²/σ² follows χ² with ν degrees of freedom. Of
 * the distance to one limit (C_pk and its like): Ĉ ± z·√(1/(9n) + Ĉ²/(2ν)). Sources: both in the
 * help text "capability analysis" of NIST's Dataplot; the second is A. F. Bissell, Applied
 * Statistics 39 (1990) 331–340. Both hold for normal values.
 *
 * @param value the estimate
 * @param ofSpread true for C_p, false for an index that also holds the mean
 * @param n values behind the mean
 * @param freedom degrees of freedom ν behind the standard deviation
 */
public record CapabilityIndex(double value, boolean ofSpread, int n, double freedom) {
  /**
   * @param confidence of the two-sided interval, between 0 and 1
   */
  public Bounds interval(double confidence) {
    double tail = (1 - confidence) / 2;
    return new Bounds(end(tail), end(1 - tail));
  }

  /**
   * @param confidence of the one-sided bound, between 0 and 1
   * @return what the true index is not below, at that confidence
   */
  public double atLeast(double confidence) {
    return end(1 - confidence);
  }

  private double end(double probability) {
    if (ofSpread) {
      ChiSquaredDistribution chi = new ChiSquaredDistribution(null, freedom);
      return value * Math.sqrt(chi.inverseCumulativeProbability(probability) / freedom);
    }
    double error = Math.sqrt(1 / (9.0 * n) + value * value / (2 * freedom));
    return value + Normal.quantile(probability) * error;
  }
}
