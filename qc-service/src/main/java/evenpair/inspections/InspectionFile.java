package evenpair.inspections;

import evenpair.products.Products.Product;
import evenpair.tolerance.Reason;
import evenpair.tolerance.RegionResult;
import java.util.List;
import java.util.Optional;

/**
 * All rows of one inspection together with what they refer to.
 *
 * @param attempts in order of number
 * @param verdict empty unless closed
 */
record InspectionFile(
    InspectionRow row,
    List<AttemptRow> attempts,
    Optional<VerdictRow> verdict,
    Product product,
    UnitVerdict unit) {

  /**
   * @return why it failed once closed; before that, what was wrong with the last attempt
   */
  List<Reason> reasons() {
    if (verdict.isPresent()) {
      return RecordJson.read(verdict.get().reasons());
    }
    return attempts.isEmpty()
        ? List.of()
        : RecordJson.read(attempts.get(attempts.size() - 1).reasons());
  }

  List<RegionResult> regions() {
    return verdict.map(v -> RecordJson.readRegions(v.regions())).orElse(List.of());
  }

  boolean conditional() {
    return verdict.map(VerdictRow::conditional).orElse(false);
  }

  /**
   * @return which mounting of the unit the attempt was, 1 upwards; an INVALID attempt is none and
   *     counts as the one before
   */
  int tryOf(AttemptRow attempt) {
    return (int)
        attempts.stream()
            .filter(a -> a.number() <= attempt.number() && a.outcome().countsAsTry())
            .count();
  }
}
