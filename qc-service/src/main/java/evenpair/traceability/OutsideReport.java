package evenpair.traceability;

import evenpair.acoustics.Curve;
import evenpair.inspections.Inspections.Inspection;
import evenpair.traceability.outside.Comparison;
import evenpair.traceability.outside.Ours;
import evenpair.traceability.outside.Theirs;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * An outside report with everything that its answer is made of.
 *
 * @param id null while it is only tried, not kept
 * @param inspection of ours, that it is held against
 * @param percentiles by region: share of the batch's pairs whose region mean of left − right is
 *     smaller in magnitude than this pair's
 * @param batchUnits how many pairs that share is of
 */
record OutsideReport(
    UUID id,
    Instant receivedAt,
    Inspection inspection,
    Ours ours,
    Theirs theirs,
    Comparison comparison,
    OutsideRequest.Source source,
    Map<String, Double> percentiles,
    int batchUnits) {

  /**
   * @return their left − right as it is compared: turned round where the channels were exchanged
   */
  Optional<Curve> theirDifference() {
    return theirs.left().isEmpty()
        ? Optional.empty()
        : Optional.of(
            Curve.mean(theirs.left())
                .minus(Curve.mean(theirs.right()))
                .times(comparison.swapped() ? -1 : 1));
  }

  /**
   * @return whether our own record has the pair outside a match limit
   */
  boolean oursOutside() {
    return inspection.regions().stream()
        .anyMatch(
            row -> row.check().equals("match") && row.marginDb() != null && row.marginDb() < 0);
  }
}
