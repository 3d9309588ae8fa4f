package evenpair.tolerance;

/** What an attempt or an inspection comes to. */
public enum Verdict {
  /** Every check inside its limit, by the limit set's decision rule. */
  PASS,
  /** At least one check outside. */
  FAIL,
  /** The capture looks like a bad mounting: mount again. */
  RESEAT,
  /** Decodes but cannot be judged: mend the cause that the reason names. */
  INVALID
}
