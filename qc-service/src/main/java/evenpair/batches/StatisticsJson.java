package evenpair.batches;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What the statistics addresses below a batch answer; numbers in dB unless said otherwise. */
final class StatisticsJson {
  private StatisticsJson() {}

  /** Which units were looked at. */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record About(
      @Schema(example = "SW-2647") String batch,
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      List<Integer> limitSets,
      @Schema(description = "Units with curves", example = "38") int n,
      @Schema(description = "Stations among them") List<String> stations,
      Instant firstAt,
      Instant lastAt) {}

  @Schema(description = "Why nothing can be said")
  record Missing(
      @Schema(
              description = "What is lacking",
              allowableValues = {"units", "spread", "groups"})
          String lack,
      @Schema(example = "4") int have,
      @Schema(example = "10") int need,
      String text) {}

  // ---- capability

  record Capabilities(About about, List<CapabilityRow> rows, String method, List<String> notes) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record CapabilityRow(
      @Schema(example = "region-mean") String quantity,
      @Schema(example = "treble") String region,
      @Schema(example = "left") String channel,
      @Schema(example = "Left, mean of treble") String name,
      @Schema(description = "Units in this row", example = "38") int n,
      Double lowerLimitDb,
      Double upperLimitDb,
      Double meanDb,
      @Schema(description = "From one unit to the next: mean moving range ÷ d2") Double sdWithinDb,
      @Schema(description = "Of all units, with n − 1") Double sdOverallDb,
      Index cp,
      Index cpk,
      Index pp,
      Index ppk,
      Normality normality,
      @Schema(description = "Given where the values cannot be normal") Alternative alternative,
      Holding holds,
      @Schema(
              description = "Which of the numbers may be quoted",
              allowableValues = {"normal", "percentiles", "counting"})
          String quoted,
      @Schema(description = "Given instead of numbers") Missing missing) {}

  record Index(
      @Schema(example = "1.20") double value,
      @Schema(description = "Two-sided, 95 %", example = "[0.95, 1.45]") double[] interval,
      @Schema(description = "One-sided, 95 %", example = "0.99") double atLeast) {}

  record Normality(
      @Schema(description = "Anderson–Darling A²") double aSquared,
      @Schema(description = "Chance of a larger one if normal") double p,
      @Schema(description = "p below 0.05") boolean rejected) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Alternative(
      @Schema(allowableValues = {"percentiles", "counting"}) String method,
      @Schema(description = "By percentiles; null by counting") Double ppk,
      @Schema(description = "By counting, one-sided 95 %; null by percentiles") Double atLeast,
      @Schema(description = "Units outside the limits") int outside,
      String text) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  @Schema(description = "Statistical tolerance interval")
  record Holding(
      @Schema(example = "0.95") double share,
      @Schema(example = "0.95") double confidence,
      Double lowerDb,
      Double upperDb,
      @Schema(allowableValues = {"normal", "extremes"}) String method) {}

  // ---- control charts

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Charts(
      About about,
      @Schema(example = "region-mean") String quantity,
      @Schema(example = "treble") String region,
      @Schema(example = "left") String channel,
      @Schema(example = "Left, mean of treble") String name,
      @Schema(example = "dB") String unit,
      @Schema(allowableValues = {"individuals", "xbar-s", "ewma", "cusum", "p"}) String kind,
      @Schema(description = "Units (xbar-s and p: groups) that set the limits") int baseline,
      @Schema(description = "Units in a group; 1 for single ones") int subgroup,
      Double sigmaDb,
      List<ChartPoint> points,
      List<ChartPanel> panels,
      List<Signal> signals,
      String method,
      List<String> notes,
      Missing missing,
      List<Choice> choices) {}

  @Schema(description = "A unit, or a group of them")
  record ChartPoint(Instant at, List<UnitLink> units) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record UnitLink(UUID inspection, String serial, String verdict) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record ChartPanel(
      String title,
      @Schema(description = "One value a point; null where there is none") List<double[]> lines,
      double centre,
      @Schema(description = "null: no such limit") double[] lower,
      @Schema(description = "null: no such limit") double[] upper) {}

  record Signal(
      @Schema(description = "Place of the panel, 0 for the first") int panel,
      @Schema(example = "nine-on-one-side") String rule,
      @Schema(example = "Nine in a row on one side of the centre") String text,
      @Schema(description = "Places of the points that signal, 0 for the first") int[] points) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Choice(String quantity, String region, String channel, String name) {}

  // ---- principal components

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Components(
      About about,
      @Schema(description = "Passed units from which the components were found") int from,
      @Schema(description = "Hz; every second grid point") double[] frequencyHz,
      List<Component> components,
      TSquared tSquared,
      List<ScoredUnit> units,
      String method,
      List<String> notes,
      Missing missing) {}

  record Component(
      @Schema(description = "Of the whole variance", example = "0.42") double share,
      @Schema(description = "What one standard deviation of it changes, dB") double[] leftDb,
      double[] rightDb,
      @Schema(example = "Strongest in treble, left: 0.6 dB at 9.5 kHz") String text) {}

  record TSquared(
      @Schema(description = "Components in T²") int components,
      @Schema(description = "Chance that a good unit exceeds the limit") double alpha,
      @Schema(description = "For the units that the components were found from (phase I)")
          double memberLimit,
      @Schema(description = "For all others (phase II)") double otherLimit) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record ScoredUnit(
      UUID inspection,
      String serial,
      String verdict,
      Instant at,
      boolean member,
      Double tSquared,
      boolean signals,
      @Schema(description = "Scores in standard deviations") double[] scores,
      @Schema(description = "r.m.s. of what the components do not hold, dB") Double restDb,
      @Schema(description = "The component with the largest part of T², 0 for the first")
          Integer mostBy,
      @Schema(description = "That part, 0 … 1") Double mostShare) {}

  // ---- stations

  record StationComparison(
      About about, List<StationRow> rows, String method, List<String> notes, Missing missing) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record StationRow(
      String quantity,
      String region,
      String channel,
      String name,
      Double f,
      Double p,
      List<StationMean> stations,
      List<StationDifference> differences,
      Missing missing) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record StationMean(String station, int n, Double meanDb, Double sdDb) {}

  record StationDifference(
      String first,
      String second,
      double differenceDb,
      @Schema(description = "All intervals of the page hold together at 95 %") double[] interval,
      @Schema(description = "The interval leaves 0 out") boolean clear,
      String text) {}
}
