package evenpair.tolerance;

import java.util.Locale;

/** How one check came out, in rising order of concern (words of ILAC-G8, from memory). */
public enum CheckState {
  NOT_JUDGED,
  PASS,
  /** Inside the limit, by less than the guard band. */
  CONDITIONAL_PASS,
  /** Beyond the limit, by no more than the guard band. */
  CONDITIONAL_FAIL,
  FAIL;

  /**
   * @param marginDb distance to the limit, 0 or above inside
   * @param guardDb guard band w, 0 for simple acceptance
   * @return m ≥ w: pass; 0 ≤ m &lt; w: conditional pass; −w ≤ m &lt; 0: conditional fail; else fail
   */
  static CheckState of(double marginDb, double guardDb) {
    if (marginDb >= 0) {
      return marginDb >= guardDb ? PASS : CONDITIONAL_PASS;
    }
    return marginDb >= -guardDb ? CONDITIONAL_FAIL : FAIL;
  }

  /**
   * @return lower case with hyphens, such as {@code conditional-pass}
   */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
