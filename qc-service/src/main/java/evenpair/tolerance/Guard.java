package evenpair.tolerance;

import evenpair.acoustics.Curve;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * The guard bands of one judgement, w = guard·U with the expanded uncertainty U = 2u (ISO 14253-1,
 * ILAC-G8, JCGM 106, from memory), and what the decision rule makes of a state. Simple acceptance
 * is a guard band of 0 everywhere.
 *
 * <p>Distortion, idle noise and polarity have no uncertainty in the station's budget: they are
 * decided simply under any rule.
 */
final class Guard {
  /** U = k·u. */
  private static final double COVERAGE_FACTOR = 2;

  private final boolean guarded;
  private final LimitSet.DecisionRule rule;
  private final double[] level;
  private final double[] match;
  private final double offset;
  private final double balance;

  /**
   * @param uncertainty empty: as simple acceptance (for a guarded set the judgement is INVALID
   *     anyway)
   */
  Guard(LimitSet.DecisionRule rule, Optional<Uncertainty> uncertainty) {
    Optional<Uncertainty> used = uncertainty.filter(u -> rule.guarded());
    double factor = rule.guard() * COVERAGE_FACTOR;
    this.guarded = used.isPresent();
    this.rule = rule;
    this.level = used.map(u -> bands(u.levelDb(), factor)).orElse(null);
    this.match = used.map(u -> bands(u.matchDb(), factor)).orElse(null);
    this.offset = band(used, Uncertainty::offsetDb, factor);
    this.balance = band(used, Uncertainty::balanceDb, factor);
  }

  private static double[] bands(Curve u, double factor) {
    return u.times(factor).toArray();
  }

  private static double band(
      Optional<Uncertainty> u, ToDoubleFunction<Uncertainty> which, double factor) {
    return u.map(present -> factor * which.applyAsDouble(present)).orElse(0.0);
  }

  /**
   * @return true if there are guard bands
   */
  boolean applies() {
    return guarded;
  }

  /**
   * @return w of a deviation at a grid point, dB; NaN if the uncertainty there is not known
   */
  double level(int index) {
    return guarded ? level[index] : 0;
  }

  /**
   * @return w of a left/right difference at a grid point, dB; NaN if the uncertainty there is not
   *     known
   */
  double match(int index) {
    return guarded ? match[index] : 0;
  }

  /**
   * @return w of a_c, dB
   */
  double offset() {
    return offset;
  }

  /**
   * @return w of a_L − a_R, dB
   */
  double balance() {
    return balance;
  }

  /**
   * @return true if a check in this state keeps the pair from passing
   */
  boolean rejects(CheckState state) {
    return rule.rejects(state);
  }
}
