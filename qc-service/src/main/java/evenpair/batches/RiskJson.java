package evenpair.batches;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;

/** What a batch's risks answer. Risks are shares of all units, 0 … 1. */
final class RiskJson {
  private RiskJson() {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Risks(
      @Schema(example = "SW-2647") String batch,
      @Schema(example = "sedge-2") String product,
      @Schema(example = "plain") String tuning,
      @Schema(example = "3") int limitSet,
      @Schema(description = "Units whose curves tell the spread", example = "38") int units,
      Decision decision,
      List<StationBudget> stations,
      @Schema(description = "The check with the largest consumer's risk; null if none can be told")
          Largest consumers,
      @Schema(description = "The check with the largest producer's risk; null if none can be told")
          Largest producers,
      @Schema(description = "Level, balance, then the checks of each region") List<Check> checks,
      @Schema(description = "How it was computed: a sentence") String method,
      @Schema(description = "What cannot be said, and why: sentences") List<String> notes) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Decision(
      @Schema(
              example = "guarded",
              allowableValues = {"simple", "guarded"})
          String rule,
      @Schema(description = "Guard band as a multiple of U = 2u", example = "1.0") double guard,
      @Schema(description = "Whether a result inside the guard band is accepted")
          Boolean conditionalPassAccepted) {}

  record StationBudget(
      @Schema(example = "bench-1") String station,
      @Schema(example = "20") int units,
      @Schema(description = "Whether it has a valid uncertainty budget") boolean budget) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Largest(
      @Schema(example = "0.0004") double risk,
      @Schema(example = "window") String check,
      @Schema(example = "treble") String region,
      @Schema(example = "right") String channel) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Check(
      @Schema(
              example = "window",
              allowableValues = {"level", "balance", "window", "match"})
          String check,
      @Schema(example = "treble") String region,
      @Schema(example = "right") String channel,
      @Schema(description = "Accepted though out of tolerance, at its worst point; null if unknown")
          Point consumers,
      @Schema(description = "Rejected though in tolerance, at its worst point; null if unknown")
          Point producers) {}

  /**
   * @param atHz null for a number that has no frequency
   */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Point(
      @Schema(example = "0.0004") double risk,
      @Schema(example = "8500") Double atHz,
      @Schema(description = "Mean of the measured values, dB", example = "0.4") double meanDb,
      @Schema(description = "Their standard deviation, dB", example = "0.7") double sdDb,
      @Schema(description = "Standard uncertainty of one of them, dB", example = "0.2") double uDb,
      @Schema(example = "-3.0") double lowerDb,
      @Schema(example = "3.0") double upperDb,
      @Schema(description = "Guard band taken off each limit, dB", example = "0.4")
          double guardDb) {}
}
