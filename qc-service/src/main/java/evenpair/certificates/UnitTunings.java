package evenpair.certificates;

import evenpair.inspections.Inspections.Inspection;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Which closed inspection holds for each tuning of a unit: the newest of it in the unit's current
 * occasion, which is that of its newest inspection that was not abandoned.
 *
 * @param newest the unit's newest inspection, open or closed: it knows the unit's verdict
 * @param required tunings that the product requires, in its order
 * @param byTuning the newest closed inspection of each tuning
 */
record UnitTunings(Inspection newest, List<String> required, Map<String, Inspection> byTuning) {

  /**
   * @param all every inspection of the unit, oldest first, one at least
   */
  static UnitTunings of(List<Inspection> all, List<String> required) {
    Map<String, Inspection> byTuning = new LinkedHashMap<>();
    Inspection newest = newest(all);
    all.stream()
        .filter(
            inspection ->
                inspection.state().equals("closed")
                    && inspection.occasion().equals(newest.occasion()))
        .forEach(inspection -> byTuning.put(inspection.tuning(), inspection));
    return new UnitTunings(newest, required, byTuning);
  }

  private static Inspection newest(List<Inspection> all) {
    return all.stream()
        .filter(inspection -> !inspection.state().equals("abandoned"))
        .reduce((earlier, later) -> later)
        .orElse(all.get(all.size() - 1));
  }

  /**
   * @throws Refusal 409 naming the required tunings that are missing or failed
   */
  void requirePass() {
    List<String> missing =
        required.stream().filter(tuning -> !byTuning.containsKey(tuning)).toList();
    List<String> failed =
        required.stream()
            .filter(byTuning::containsKey)
            .filter(tuning -> !byTuning.get(tuning).verdict().equals("PASS"))
            .toList();
    if (required.isEmpty()
        || !missing.isEmpty()
        || !failed.isEmpty()
        || !"PASS".equals(newest.unitVerdict())) {
      throw new Refusal(
              409,
              "not-passed",
              "Unit " + newest.serial() + " has no certificate: " + why(missing, failed) + ".")
          .with("missing", missing)
          .with("failed", failed);
    }
  }

  private String why(List<String> missing, List<String> failed) {
    List<String> parts = new ArrayList<>();
    if (!failed.isEmpty()) {
      parts.add("failed in " + String.join(", ", failed));
    }
    if (!missing.isEmpty()) {
      parts.add("not yet judged in " + String.join(", ", missing));
    }
    return parts.isEmpty() ? "as a whole it is " + newest.unitVerdict() : String.join("; ", parts);
  }

  /**
   * @return the inspection of the first required tuning
   */
  Inspection first() {
    return byTuning.get(required.get(0));
  }

  /**
   * @return the inspections that hold, required tunings first
   */
  List<Inspection> closed() {
    List<Inspection> closed = new ArrayList<>(required.stream().map(byTuning::get).toList());
    byTuning.values().stream()
        .filter(inspection -> !required.contains(inspection.tuning()))
        .forEach(closed::add);
    return closed;
  }
}
