package evenpair.inspections;

import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionView;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;

/** Hands over closed inspections one by one, so that a whole batch need not be held in memory. */
public interface InspectionStream {
  /**
   * @return the limit-set versions that judged units of the batch in that tuning, rising
   */
  List<Integer> versions(String batch, String product, String tuning);

  /**
   * Reads in production order (first attempt's measurement time).
   *
   * @param limitSetVersion null for every version
   */
  void each(
      String batch,
      String product,
      String tuning,
      Integer limitSetVersion,
      Consumer<StreamedInspection> taker);

  /**
   * One closed inspection. Nothing of the person who measured is in it.
   *
   * @param firstPass the unit's first closed inspection in this tuning and batch
   * @param leftEarpiece the earpiece's own number; null if it was sent without
   * @param leftAlignmentDb a_L; null for a unit that never sealed
   * @param leftDb the mean of the valid seatings, unsmoothed, dB SPL, NaN where absent; for one
   *     seating the stored floats themselves; null for a unit that never sealed
   */
  record StreamedInspection(
      UUID inspection,
      String serial,
      String batch,
      String product,
      String tuning,
      int limitSetVersion,
      String limitSetDigest,
      UUID limitSetId,
      String earSimulator,
      String station,
      String occasion,
      boolean firstPass,
      String verdict,
      boolean conditional,
      Instant measuredAt,
      Instant closedAt,
      int validSeatings,
      int tries,
      String leftEarpiece,
      String rightEarpiece,
      Double leftAlignmentDb,
      Double rightAlignmentDb,
      List<ReasonView> reasons,
      List<RegionView> regions,
      float[] leftDb,
      float[] rightDb,
      String softwareVersion) {}
}
