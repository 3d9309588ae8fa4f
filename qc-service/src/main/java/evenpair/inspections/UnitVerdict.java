package evenpair.inspections;

import evenpair.products.Products.Tuning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * A unit as a whole, in its current occasion: that of its newest inspection which was not
 * abandoned. It passes when every tuning that the product requires has a closed PASS there; it
 * fails when one of them was last closed with FAIL.
 *
 * @param verdict PASS, FAIL or INCOMPLETE
 * @param occasion null if nothing has been inspected
 * @param passed required tunings
 * @param missing required tunings without a verdict
 * @param failed required tunings
 */
record UnitVerdict(
    String verdict,
    Occasion occasion,
    List<String> passed,
    List<String> missing,
    List<String> failed) {
  /**
   * @param inspections every inspection of the unit, in any order
   */
  static UnitVerdict of(List<Tuning> tunings, List<InspectionRow> inspections) {
    Occasion occasion =
        inspections.stream()
            .filter(i -> i.state() != InspectionState.ABANDONED)
            .max(Comparator.comparing(InspectionRow::id))
            .map(InspectionRow::occasion)
            .orElse(null);
    List<String> passed = new ArrayList<>();
    List<String> missing = new ArrayList<>();
    List<String> failed = new ArrayList<>();
    for (Tuning tuning : tunings) {
      if (tuning.required()) {
        Optional<InspectionRow> last = lastClosed(inspections, tuning.key(), occasion);
        List<String> list =
            last.isEmpty() ? missing : last.get().verdict() == Outcome.PASS ? passed : failed;
        list.add(tuning.key());
      }
    }
    String verdict =
        !failed.isEmpty() ? "FAIL" : missing.isEmpty() && !passed.isEmpty() ? "PASS" : "INCOMPLETE";
    return new UnitVerdict(
        verdict, occasion, List.copyOf(passed), List.copyOf(missing), List.copyOf(failed));
  }

  /**
   * @return the newest closed inspection of the unit in that tuning and occasion
   */
  static Optional<InspectionRow> lastClosed(
      List<InspectionRow> inspections, String tuning, Occasion occasion) {
    return inspections.stream()
        .filter(
            i ->
                i.state() == InspectionState.CLOSED
                    && i.tuning().equals(tuning)
                    && i.occasion() == occasion)
        .max(Comparator.comparing(InspectionRow::id));
  }
}
