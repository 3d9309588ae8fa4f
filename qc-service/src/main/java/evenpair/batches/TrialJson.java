package evenpair.batches;

import com.fasterxml.jackson.annotation.JsonInclude;
import evenpair.batches.RiskJson.Check;
import evenpair.batches.RiskJson.Largest;
import evenpair.batches.RiskJson.StationBudget;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What a trial answers. */
final class TrialJson {
  private TrialJson() {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record TrialView(
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      @Schema(description = "Batches of the units") List<String> batches,
      TriedSet limitSet,
      Units units,
      @Schema(description = "What the trial's set would have given") Share predicted,
      @Schema(description = "What was recorded") Share recorded,
      Flips flips,
      @Schema(description = "The set's checks in its order, then the others")
          List<CheckShare> checks,
      RiskShares risks,
      @Schema(description = "null without prices") Costs cost,
      List<TightnessPoint> tightness,
      @Schema(description = "What cannot be said, and why: sentences") List<String> notes) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record TriedSet(
      @Schema(example = "4") int version,
      @Schema(description = "As it would have as a version") String digest,
      @Schema(description = "Canonical YAML") String yaml,
      @Schema(description = "The same, as the keys and values of its YAML")
          Map<String, Object> limitSet) {}

  @Schema(description = "A counted share with its two-sided intervals")
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Share(
      @Schema(example = "33") int passed,
      @Schema(example = "40") int of,
      @Schema(description = "null of none", example = "0.825") Double share,
      @Schema(example = "0.95") double confidence,
      @Schema(example = "[0.6805, 0.9125]") double[] wilson,
      @Schema(example = "[0.6722, 0.9266]") double[] clopperPearson) {}

  record Units(
      @Schema(description = "Each serial once, by its first closed inspection") int inspected,
      @Schema(description = "Units with curves") int withCurves,
      int passed,
      int failed,
      @Schema(description = "Cannot be judged by this set") int undecided,
      @Schema(description = "Passes with a result inside the guard band") int conditional,
      @Schema(description = "Units that the judge itself looked at, beside the flat arrays")
          int judgedSingly,
      @Schema(description = "Later inspections of the same serials, left out") int further) {}

  record Flips(
      int toPass,
      int toFail,
      int toUndecided,
      @Schema(description = "The first 200 of them, in production order") List<Flip> shown) {}

  record Flip(
      UUID inspection,
      @Schema(example = "SG2-004217") String serial,
      @Schema(example = "SW-2647") String batch,
      @Schema(example = "bench-1") String station,
      Instant at,
      @Schema(example = "PASS") String recorded,
      @Schema(example = "FAIL") String predicted,
      @Schema(description = "Why it failed when it was recorded") List<String> recordedReasons,
      @Schema(description = "Why it would not pass now") List<String> reasons) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record CheckShare(
      @Schema(example = "window") String check,
      @Schema(example = "treble") String region,
      @Schema(example = "right") String channel,
      @Schema(description = "Units that fail it, whatever else they fail") int units,
      @Schema(description = "Of all units that can be judged") double share,
      @Schema(description = "Of them, those that fail nothing else") int sole,
      @Schema(description = "Smallest margin of any unit, dB; null without one") Double marginDb,
      @Schema(description = "That unit") String worstSerial,
      UUID worstInspection,
      @Schema(example = "Right earpiece outside its treble window") String text) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record RiskShares(
      @Schema(description = "The check with the largest consumer's risk; null if none can be told")
          Largest consumers,
      @Schema(description = "The check with the largest producer's risk; null if none can be told")
          Largest producers,
      @Schema(description = "Share of units accepted though out of tolerance: at least")
          Double escapedAtLeast,
      @Schema(description = "… at most: the checks' sum") Double escapedAtMost,
      @Schema(description = "True if a u was stated instead of the stations' budgets")
          boolean stated,
      List<StationBudget> stations,
      List<Check> checks,
      @Schema(description = "How it was computed: a sentence") String method,
      List<String> notes) {}

  @Schema(description = "Of a thousand units made, in the currency of the prices")
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record CostShares(
      double scrapped,
      double reworked,
      @Schema(description = "null where nothing is known of the measurement") Double escapedAtLeast,
      Double escapedAtMost,
      Double totalAtLeast,
      Double totalAtMost) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Costs(
      CostShares predicted,
      @Schema(description = "As recorded; escapes not known") CostShares recorded) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record TightnessPoint(
      @Schema(description = "Scale of windows and match limits", example = "0.9") double scale,
      int passed,
      int of,
      Double share,
      @Schema(description = "Of a thousand units; null without prices") Double costAtLeast,
      Double costAtMost) {}
}
