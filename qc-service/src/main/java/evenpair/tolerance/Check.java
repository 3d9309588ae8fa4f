package evenpair.tolerance;

/** One kind of check; immutable. */
interface Check {
  /**
   * Looks at the pair and notes a row for each thing checked, and a reason for each failing one.
   */
  void look(JudgedPair pair, Findings findings);
}
