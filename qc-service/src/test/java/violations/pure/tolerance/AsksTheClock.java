package violations.pure.tolerance;

/** Breaks the rule on purpose: two runs judge differently. */
class AsksTheClock {
  long now() {
    return System.currentTimeMillis();
  }
}
