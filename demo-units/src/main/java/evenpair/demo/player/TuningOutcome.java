package evenpair.demo.player;

import java.util.List;
import java.util.Optional;

/**
 * What one inspection of one unit came to.
 *
 * @param tuning the tuning
 * @param inspection the record's id
 * @param verdict PASS or FAIL; OPEN if no try could be judged
 * @param attempts the outcome of each try, in order
 * @param sent how many of the tries this run sent; 0 if an earlier run had finished the inspection
 * @param sentence the reason that an operator would act on first
 */
record TuningOutcome(
    String tuning,
    String inspection,
    String verdict,
    List<String> attempts,
    int sent,
    Optional<String> sentence) {
  TuningOutcome {
    attempts = List.copyOf(attempts);
  }

  /**
   * @return such as {@code PASS}, or {@code INVALID, PASS} where a try before it could not be
   *     judged
   */
  String story() {
    return attempts.size() > 1 ? String.join(", ", attempts) : verdict;
  }
}
