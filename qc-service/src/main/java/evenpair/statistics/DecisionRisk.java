package evenpair.statistics;

import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * What a decision by measurement risks: an item conforms if its true value lies in the tolerance
 * interval, and is accepted if its measured value lies in the acceptance interval.
 *
 * <p>Source: JCGM 106:2012, clauses 7 to 9 (from memory); guard bands also by ILAC-G8:09/2019 and
 * ISO 14253-1:2017 (from memory). Both errors and true values are taken as normal.
 *
 * @param lower lower tolerance limit T_L; −∞ if there is none
 * @param upper upper tolerance limit T_U, above the lower one; +∞ if there is none
 */
public record DecisionRisk(double lower, double upper) {
  private static final NormalDistribution NORMAL = new NormalDistribution(null, 0, 1);

  /**
   * @throws IllegalArgumentException unless lower &lt; upper and one of them is finite
   */
  public DecisionRisk {
    if (!(lower < upper) || Double.isInfinite(lower) && Double.isInfinite(upper)) {
      throw new IllegalArgumentException(
          "a tolerance needs a lower limit below its upper one, was " + lower + " … " + upper);
    }
  }

  /**
   * Probability that an item conforms whose value was found to be y with standard uncertainty u:
   * Φ((T_U − y)/u) − Φ((T_L − y)/u).
   *
   * @param y measured value, finite
   * @param u standard uncertainty, 0 upwards; with 0 the item conforms or it does not
   * @return 0 … 1
   */
  public double conformance(double y, double u) {
    requireFinite("measured value", y);
    requireSpread("standard uncertainty", u);
    return between(lower, upper, y, u);
  }

  /**
   * Specific consumer's risk: the probability 1 − p that an accepted item found at y does not
   * conform. Summed from both tails, so that small risks keep their digits.
   */
  public double consumersRiskAt(double y, double u) {
    requireFinite("measured value", y);
    requireSpread("standard uncertainty", u);
    return outside(lower, upper, y, u);
  }

  /**
   * Global risks of a population whose true values are N(y0, u0), measured with N(0, u_m), accepted
   * within [T_L + w, T_U − w].
   *
   * <p>Consumer's risk R_C = ∫ outside T of g0(η)·P(accepted | η) dη, producer's risk R_P = ∫
   * inside T of g0(η)·(1 − P(accepted | η)) dη, g0 the density of N(y0, u0). Without measurement
   * error (u_m = 0) acceptance is certain or impossible; without spread (u0 = 0) all items are
   * alike: both are answered exactly. Limits that the guard band pushes past each other accept
   * nothing.
   *
   * @param y0 mean of the true values, finite
   * @param u0 their standard deviation, 0 upwards
   * @param um standard uncertainty of one measurement, 0 upwards
   * @param w guard band, finite: above 0 accepts less than the tolerance, below 0 more
   * @return the risks, to 1e-12
   */
  public Global global(double y0, double u0, double um, double w) {
    requireFinite("mean", y0);
    requireFinite("guard band", w);
    requireSpread("standard deviation", u0);
    requireSpread("standard uncertainty", um);
    return new GlobalRisk(this, y0, u0, um, w).risks();
  }

  /**
   * Largest probability of a false acceptance under a guard band w = r·U, U = 2u, for one limit:
   * Φ(−2r), reached by a result on the acceptance limit. For r &lt; 0 it is that of a false
   * rejection of items rejected beyond limit + |r|·U, mirrored: 1 − Φ(−2r).
   *
   * @param r guard band as a multiple of the expanded uncertainty (coverage factor 2)
   */
  public static double falseAcceptance(double r) {
    requireFinite("multiple", r);
    return NORMAL.cumulativeProbability(-2 * r);
  }

  /**
   * @param probability of conformance wanted at the acceptance limit, 0.5 up to below 1
   * @return the guard band for one limit as a multiple r of U = 2u: z/2, z the normal quantile
   */
  public static double guardFor(double probability) {
    if (!(probability >= 0.5 && probability < 1)) {
      throw new IllegalArgumentException(
          "probability must be 0.5 up to below 1, was " + probability);
    }
    return NORMAL.inverseCumulativeProbability(probability) / 2;
  }

  /**
   * Shares of all items.
   *
   * @param consumer accepted though it does not conform
   * @param producer rejected though it conforms
   * @param nonconforming does not conform, accepted or not
   * @param accepted accepted, conforming or not
   */
  public record Global(double consumer, double producer, double nonconforming, double accepted) {}

  /** P(from ≤ x ≤ to) for x of N(mean, sd); differences are taken in the tail that is smaller. */
  static double between(double from, double to, double mean, double sd) {
    if (!(from < to)) {
      return 0;
    }
    if (sd == 0) {
      return mean >= from && mean <= to ? 1 : 0;
    }
    double a = (from - mean) / sd;
    double b = (to - mean) / sd;
    return a > 0 ? phi(-a) - phi(-b) : phi(b) - phi(a);
  }

  /** P(x &lt; from or x &gt; to). */
  static double outside(double from, double to, double mean, double sd) {
    if (!(from < to)) {
      return 1;
    }
    if (sd == 0) {
      return mean >= from && mean <= to ? 0 : 1;
    }
    return phi((from - mean) / sd) + phi((mean - to) / sd);
  }

  /** Beyond 9 the tail is lost beside 1, below −38 it is less than the smallest double. */
  private static double phi(double z) {
    if (z > 9) {
      return 1;
    }
    return z < -38 ? 0 : NORMAL.cumulativeProbability(z);
  }

  private static void requireFinite(String what, double value) {
    if (!Double.isFinite(value)) {
      throw new IllegalArgumentException(what + " must be finite, was " + value);
    }
  }

  private static void requireSpread(String what, double value) {
    if (!(value >= 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(what + " must be 0 or more, was " + value);
    }
  }
}
