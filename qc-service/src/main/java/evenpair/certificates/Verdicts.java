package evenpair.certificates;

import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.Inspection;
import evenpair.web.Refusal;
import java.util.UUID;

/** Which paper an inspection may have: each belongs to one verdict. */
final class Verdicts {
  private Verdicts() {}

  /**
   * @throws Refusal 404 for an unknown inspection
   */
  static Inspection find(Inspections inspections, UUID id) {
    return inspections
        .find(id)
        .orElseThrow(
            () -> new Refusal(404, "unknown-inspection", "There is no inspection " + id + "."));
  }

  /**
   * @param verdict PASS or FAIL
   * @param paper what it is called in the refusal
   * @throws Refusal 409 saying why there is no such paper
   */
  static void require(String verdict, Inspection inspection, String paper) {
    if (verdict.equals(inspection.verdict())) {
      return;
    }
    Refusal refusal =
        new Refusal(
                409,
                verdict.equals("PASS") ? "not-passed" : "not-failed",
                "Inspection "
                    + inspection.id()
                    + " has no "
                    + paper
                    + ": "
                    + why(inspection)
                    + "."
                    + firstReason(inspection))
            .with("state", inspection.state());
    throw inspection.verdict() == null ? refusal : refusal.with("verdict", inspection.verdict());
  }

  private static String why(Inspection inspection) {
    if (inspection.verdict() != null) {
      return "its verdict is " + inspection.verdict();
    }
    return "it is "
        + inspection.state()
        + (inspection.lastAttempt() == null
            ? ""
            : ", its last attempt was " + inspection.lastAttempt());
  }

  private static String firstReason(Inspection inspection) {
    return inspection.reasons().isEmpty() ? "" : " " + inspection.reasons().get(0).text();
  }
}
