package evenpair.batches;

import evenpair.inspections.Inspections.RegionSpan;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * What the batch addresses answer. Arrays have 241 values on the grid, null where there is none;
 * rounded to 0.001 dB.
 */
final class BatchJson {
  private BatchJson() {}

  record Items<T>(List<T> items) {}

  record Batch(
      @Schema(example = "SW-2647") String batch,
      @Schema(example = "sedge-2") String product,
      @Schema(example = "Sedge 2") String productName,
      List<String> tunings,
      List<Integer> limitSets,
      @Schema(example = "40") int units,
      Instant lastAt) {}

  record Statistics(
      String batch,
      String product,
      String tuning,
      List<Integer> limitSets,
      Units units,
      Yield yield,
      @Schema(description = "Each unit once, by its last closed inspection of production or rework")
          Yield finalYield,
      List<RankedReason> reasons,
      @Schema(description = "Hz") double[] frequencyHz,
      @Schema(description = "Golden response, dB SPL, smoothed as judged") double[] golden,
      Window window,
      double[] matchLimitDb,
      List<RegionSpan> regions,
      String smoothing,
      Channel left,
      Channel right,
      Difference difference,
      @Schema(description = "What cannot be said, and why: sentences") List<String> notes,
      @Schema(description = "Stations that measured these units") List<String> stations,
      @Schema(
              description =
                  "Further figures of the same units: capability, charts, components, stations,"
                      + " curves, risks")
          Map<String, String> links) {}

  record Units(int inspected, int passed, int failed) {}

  @Schema(
      description =
          "First-pass yield: each unit once, by its first closed inspection in this tuning")
  record Yield(
      @Schema(example = "33") int passed,
      @Schema(example = "40") int of,
      @Schema(example = "0.825") Double share,
      @Schema(example = "0.95") double confidence,
      @Schema(example = "[0.6805, 0.9125]") double[] wilson,
      @Schema(example = "[0.6722, 0.9266]") double[] clopperPearson,
      String method) {}

  record RankedReason(
      @Schema(example = "window") String kind,
      @Schema(example = "right") String channel,
      @Schema(example = "treble") String region,
      @Schema(
              description = "Units that failed for it; a unit may stand under several reasons",
              example = "3")
          int units,
      @Schema(description = "Of all units inspected", example = "0.075") double share,
      @Schema(example = "Right earpiece outside its treble window") String text,
      @Schema(description = "The units behind it, in production order; 50 at most")
          List<StatisticsJson.UnitLink> failed) {}

  @Schema(description = "As deviation from the golden response, dB")
  record Window(double[] lowerDb, double[] upperDb) {}

  @Schema(
      description =
          "Percentiles are keyed by percent: 0.5, 2.5, 50, 97.5, 99.5 (Hyndman and Fan's type 7);"
              + " sd divides by n − 1")
  record Spread(double[] mean, double[] sd, Map<String, double[]> percentiles) {}

  record Channel(
      @Schema(description = "Units with curves") int n, Spread level, Spread deviation) {}

  @Schema(description = "Left − right, dB, not aligned in level")
  record Difference(int n, double[] mean, double[] sd, Map<String, double[]> percentiles) {}

  record Curves(
      double[] frequencyHz,
      List<UnitCurves> units,
      @Schema(
              description = "Units in this answer, evenly spread over production order",
              example = "40")
          int shown,
      @Schema(description = "Units with curves", example = "40") int of) {}

  record UnitCurves(
      UUID inspection,
      String serial,
      String verdict,
      float[] leftDeviationDb,
      float[] rightDeviationDb,
      float[] differenceDb) {}
}
