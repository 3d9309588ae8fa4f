package evenpair.inspections;

import evenpair.inspections.Inspections.ReasonView;
import evenpair.tolerance.MeasuredPair;
import evenpair.tolerance.Uncertainty;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * Earpieces as they were inspected, for regrouping. An earpiece is named by its own number; one
 * that was sent without is named by the unit that it came in: {@code SG2-004217.L}.
 */
public interface PairedEarpieces {
  /**
   * @param inspections any number; unknown ids and inspections that are not closed are left out
   * @return oldest first
   */
  List<InspectedPair> of(Collection<UUID> inspections);

  /**
   * @return of each unit of the batch its newest closed inspection in the tuning, oldest first
   */
  List<InspectedPair> ofBatch(String batch, String product, String tuning);

  /**
   * @return of each of these units its newest closed inspection in the tuning, oldest first;
   *     unknown serials are left out
   */
  List<InspectedPair> ofSerials(Collection<String> serials, String product, String tuning);

  /**
   * @return of each of these earpieces that was inspected under its own number, the newest closed
   *     inspection that it was part of
   */
  Map<String, Whereabouts> lastInspected(
      String product, String tuning, Collection<String> earpieces);

  /**
   * @return the serial in the form in which it is stored; empty if no serial can look like that
   */
  Optional<String> serial(String sent);

  /**
   * @param verdict PASS or FAIL
   * @param reasons why it failed, the most important first
   * @param leftEarpiece its own number, or the unit's with {@code .L}
   * @param pair the mean of its valid seatings, levels in dB SPL; null for a unit that never sealed
   * @param uncertainty by which it was judged; empty under simple acceptance
   */
  record InspectedPair(
      UUID inspection,
      String serial,
      String batch,
      String product,
      String tuning,
      String station,
      String occasion,
      String verdict,
      List<ReasonView> reasons,
      String leftEarpiece,
      String rightEarpiece,
      UUID limitSetId,
      Instant at,
      MeasuredPair pair,
      Optional<Uncertainty> uncertainty) {}

  /** Where an earpiece was inspected last. */
  record Whereabouts(
      UUID inspection, String serial, String verdict, String left, String right, Instant at) {}
}
