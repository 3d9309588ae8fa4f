package evenpair.statistics;

import org.apache.commons.math3.distribution.BetaDistribution;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * A share counted out of a number of independent trials, with two-sided intervals for the
 * probability behind it.
 *
 * @param hits how many times it happened, 0 … trials
 * @param trials how many times it could have happened, 0 upwards
 */
public record Proportion(int hits, int trials) {
  /**
   * @throws IllegalArgumentException if hits is not within 0 … trials
   */
  public Proportion {
    if (hits < 0 || hits > trials) {
      throw new IllegalArgumentException("hits must be 0 to " + trials + " trials, was " + hits);
    }
  }

  /**
   * @return hits ÷ trials, or NaN without trials
   */
  public double share() {
    return trials == 0 ? Double.NaN : (double) hits / trials;
  }

  /**
   * Wilson's score interval: the probabilities p with |hits/n − p| ≤ z·√(p(1−p)/n), z the normal
   * quantile at (1 + confidence)/2. Its coverage is near the confidence on average. Source: E. B.
   * Wilson, J. Am. Stat. Assoc. 22 (1927) 209–212.
   *
   * @param confidence above 0 and below 1, such as 0.95
   * @return the interval; 0 … 1 without trials
   */
  public Interval wilson(double confidence) {
    requireConfidence(confidence);
    if (trials == 0) {
      return new Interval(0, 1);
    }
    double z = new NormalDistribution().inverseCumulativeProbability((1 + confidence) / 2);
    double perTrial = z * z / trials;
    double centre = share() + perTrial / 2;
    double half = z * Math.sqrt(share() * (1 - share()) / trials + perTrial / (4 * trials));
    double lower = hits == 0 ? 0 : (centre - half) / (1 + perTrial);
    double upper = hits == trials ? 1 : (centre + half) / (1 + perTrial);
    return new Interval(lower, upper);
  }

  /**
   * Clopper's and Pearson's interval, whose coverage is never below the confidence: with α = 1 −
   * confidence, from the α/2 quantile of Beta(hits, trials − hits + 1) to the 1 − α/2 quantile of
   * Beta(hits + 1, trials − hits). Source: C. J. Clopper, E. S. Pearson, Biometrika 26 (1934)
   * 404–413.
   *
   * @param confidence above 0 and below 1, such as 0.95
   * @return the interval; 0 … 1 without trials
   */
  public Interval clopperPearson(double confidence) {
    requireConfidence(confidence);
    double tail = (1 - confidence) / 2;
    double lower = hits == 0 ? 0 : betaQuantile(hits, trials - hits + 1, tail);
    double upper = hits == trials ? 1 : betaQuantile(hits + 1, trials - hits, 1 - tail);
    return new Interval(lower, upper);
  }

  private static double betaQuantile(int alpha, int beta, double probability) {
    return new BetaDistribution(null, alpha, beta).inverseCumulativeProbability(probability);
  }

  private static void requireConfidence(double confidence) {
    if (!(confidence > 0 && confidence < 1)) {
      throw new IllegalArgumentException("confidence must lie between 0 and 1, was " + confidence);
    }
  }

  /**
   * @param lower lower end, 0 … 1 @param upper upper end, not below the lower one
   */
  public record Interval(double lower, double upper) {}
}
