package evenpair.inspections;

import evenpair.tolerance.MeasuredPair;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;

/** What was measured, unsmoothed and not judged, of many inspections at once. */
public interface MeasuredCurves {
  /**
   * @param inspections any number; unknown ids are left out
   * @return those of them that have a valid attempt, oldest first
   */
  List<MeasuredUnit> of(Collection<UUID> inspections);

  /**
   * @return every closed inspection of the batch in that tuning that has a valid attempt, oldest
   *     first
   */
  List<MeasuredUnit> ofBatch(String batch, String product, String tuning);

  /**
   * One inspection's curves.
   *
   * @param state open, closed, abandoned
   * @param verdict PASS or FAIL once closed, else null
   * @param limitSetId the version that judges it, which says at what drive its levels hold
   * @param pair the mean of its valid seatings, levels in dB SPL, as judging combines them
   */
  record MeasuredUnit(
      UUID inspection,
      String serial,
      String batch,
      String product,
      String tuning,
      String station,
      String state,
      String verdict,
      UUID limitSetId,
      Instant startedAt,
      MeasuredPair pair) {}
}
