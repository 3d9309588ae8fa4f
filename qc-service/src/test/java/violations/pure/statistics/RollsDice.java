package violations.pure.statistics;

/** Breaks the rule on purpose: a random source that no seed governs. */
class RollsDice {
  double roll() {
    return Math.random();
  }
}
