package evenpair.inspections;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * Reads what has been inspected. Everything here is a plain copy: arrays may be kept, and hold NaN
 * where a point is absent.
 */
public interface Inspections {
  /**
   * @return one inspection with its attempts, reasons and region results
   */
  Optional<Inspection> find(UUID id);

  /**
   * @return every inspection of a unit, oldest first; empty for an unknown serial
   */
  List<Inspection> ofUnit(String serial);

  /**
   * @return the curves of one inspection as judged (smoothed, correction applied); empty if it has
   *     no valid attempt
   */
  Optional<JudgedCurves> curves(UUID id);

  /**
   * @return the batches with their products, tunings and limit-set versions, newest first
   */
  List<BatchSummary> batches();

  /**
   * Reads every closed inspection of a batch in one tuning in bulk, in production order (first
   * attempt's measurement time).
   *
   * @param limitSetVersion null for every version
   */
  BatchCurves batchCurves(String batch, String product, String tuning, Integer limitSetVersion);

  /**
   * @param state open, closed, abandoned
   * @param verdict PASS or FAIL once closed, else null
   * @param lastAttempt PASS, FAIL, RESEAT, INVALID, or null
   * @param next done, reseat, another-seating
   * @param unitVerdict PASS, FAIL or INCOMPLETE over the tunings that the product requires
   * @param conditional true: by a guarded rule, a result lies inside the guard band
   */
  record Inspection(
      UUID id,
      String serial,
      String batch,
      String product,
      String productName,
      String maker,
      String tuning,
      String station,
      UUID operatorRef,
      String occasion,
      String state,
      String verdict,
      String lastAttempt,
      String next,
      int limitSetVersion,
      UUID limitSetId,
      String earSimulator,
      Instant startedAt,
      Instant closedAt,
      String softwareVersion,
      List<AttemptSummary> attempts,
      List<ReasonView> reasons,
      List<RegionView> regions,
      String unitVerdict,
      boolean conditional) {}

  record AttemptSummary(
      int number,
      int seating,
      String outcome,
      Instant measuredAt,
      String leftSha256,
      String rightSha256) {}

  /**
   * A reason as JSON carries it; the sentence is in the language asked for.
   *
   * @param measuredDb in dB, percent or dB(A), as the kind has it
   * @param otherTuning the tuning that it sounds like, or whose recordings came again; else null
   */
  record ReasonView(
      String kind,
      String channel,
      String region,
      Double frequencyHz,
      Double measuredDb,
      Double limitDb,
      List<String> alsoRegions,
      String text,
      String otherTuning) {
    /** A reason that names no other tuning. */
    public ReasonView(
        String kind,
        String channel,
        String region,
        Double frequencyHz,
        Double measuredDb,
        Double limitDb,
        List<String> alsoRegions,
        String text) {
      this(kind, channel, region, frequencyHz, measuredDb, limitDb, alsoRegions, text, null);
    }
  }

  /**
   * One check in one region; {@code judged} false means "not judged" and null numbers.
   *
   * @param state pass, conditional-pass, conditional-fail, fail or not-judged
   * @param unit of the numbers: dB, % or dB(A)
   * @param guardDb guard band w in dB; null under simple acceptance
   */
  record RegionView(
      String name,
      String check,
      String channel,
      boolean judged,
      Double marginDb,
      Double atHz,
      Double measuredDb,
      Double limitDb,
      String state,
      String unit,
      Double guardDb) {
    /** A row in dB under simple acceptance. */
    public RegionView(
        String name,
        String check,
        String channel,
        boolean judged,
        Double marginDb,
        Double atHz,
        Double measuredDb,
        Double limitDb) {
      this(
          name,
          check,
          channel,
          judged,
          marginDb,
          atHz,
          measuredDb,
          limitDb,
          simply(judged, marginDb),
          "dB",
          null);
    }

    private static String simply(boolean judged, Double marginDb) {
      if (!judged) {
        return "not-judged";
      }
      return marginDb == null || marginDb >= 0 ? "pass" : "fail";
    }
  }

  /**
   * All arrays have 241 values on the grid; NaN where absent or without a limit. Levels in dB SPL,
   * the rest in dB.
   *
   * @param lower golden + lower window limit, shifted by nothing (deviation space: subtract golden)
   * @param leftAlignmentDb a_L that was taken out before the window was judged
   */
  record JudgedCurves(
      double[] frequencyHz,
      double[] left,
      double[] right,
      double[] golden,
      double[] lower,
      double[] upper,
      double[] difference,
      double[] matchLimit,
      double leftAlignmentDb,
      double rightAlignmentDb,
      List<RegionSpan> regions,
      String smoothing,
      double specifiedFromHz,
      double specifiedToHz) {}

  record RegionSpan(String name, double fromHz, double toHz) {}

  record BatchSummary(
      String batch,
      String product,
      List<String> tunings,
      List<Integer> limitSets,
      int units,
      Instant lastAt) {}

  /**
   * The curves of a batch as flat arrays, one row of 241 values a unit; judged form (smoothed).
   *
   * @param left unit-major levels of the left channel, dB SPL
   * @param leftAlignment a_L of each unit, dB
   */
  record BatchCurves(
      String product,
      String tuning,
      List<Integer> limitSets,
      List<BatchUnit> units,
      float[] left,
      float[] right,
      double[] leftAlignment,
      double[] rightAlignment,
      double[] golden,
      double[] lower,
      double[] upper,
      double[] matchLimit,
      List<RegionSpan> regions,
      String smoothing) {}

  /**
   * @param row index into the flat arrays; −1 if the unit has no curves (a unit that never sealed)
   */
  record BatchUnit(
      UUID inspection,
      String serial,
      String station,
      String occasion,
      String verdict,
      Instant at,
      int row,
      List<ReasonView> reasons) {}
}
