package evenpair.tolerance;

import java.util.List;

/**
 * The outcome of judging one pair by one limit set.
 *
 * @param verdict PASS, FAIL, or INVALID (a required region has no data, …)
 * @param reasons why not PASS, the most important first; empty when it passes
 * @param results every check made, region by region, passed or not
 * @param leftLevelDb a_L: median of L − G over the alignment band, dB; null if it could not be
 *     judged
 * @param rightLevelDb a_R
 * @param conditional true: a PASS of which at least one check lies inside the guard band, or a FAIL
 *     of which none lies beyond it; never under simple acceptance
 */
public record Judgement(
    Verdict verdict,
    List<Reason> reasons,
    List<RegionResult> results,
    Double leftLevelDb,
    Double rightLevelDb,
    boolean conditional) {
  public Judgement {
    reasons = List.copyOf(reasons);
    results = List.copyOf(results);
  }

  /** An outcome without conditions. */
  public Judgement(
      Verdict verdict,
      List<Reason> reasons,
      List<RegionResult> results,
      Double leftLevelDb,
      Double rightLevelDb) {
    this(verdict, reasons, results, leftLevelDb, rightLevelDb, false);
  }
}
