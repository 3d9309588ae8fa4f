package evenpair.tolerance;

/** Makes judges. */
public final class Judges {
  private Judges() {}

  /**
   * Prepares what is the same for every pair (the smoothed golden response, the limits at the grid
   * points).
   *
   * @param set the limit set; what it asks for and this version cannot check makes every judgement
   *     INVALID, never a pass
   * @param golden its golden response, unsmoothed, at the set's drive
   * @return a judge that may be shared between threads
   */
  public static Judge forLimits(LimitSet set, GoldenResponse golden) {
    return new LimitJudge(set, golden);
  }
}
