package evenpair.batches;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;
import java.util.UUID;

/**
 * What the golden response builder takes and answers. Arrays have 241 values on the grid, null
 * where there is none; rounded to 0.001 dB.
 */
final class GoldenJson {
  private GoldenJson() {}

  /**
   * @param save null: no
   */
  record BuildRequest(
      @Schema(
              description =
                  "Closed inspections to build from, one a unit; or leave it out and name a batch")
          List<UUID> inspections,
      @Schema(
              example = "SW-2647",
              description = "Every unit of the batch that passed, by its first PASS")
          String batch,
      @Schema(
              description =
                  "Inspections that an engineer leaves out; nothing is left out by itself")
          List<UUID> leaveOut,
      @Schema(example = "false", description = "Whether to store the result as a new draft")
          Boolean save,
      @Schema(example = "qe-1", description = "Who saves it: the signed-in engineer, or nothing")
          String author,
      @Schema(
              example = "plain-golden.csv",
              description = "Name by which limit sets refer to it; the active one's if left out")
          String name) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Build(
      String product,
      String tuning,
      @Schema(description = "Units that make the response", example = "33") int units,
      @Schema(description = "Their curves, both channels pooled", example = "66") int curves,
      @Schema(description = "Hz") double[] frequencyHz,
      @Schema(description = "Median, dB SPL, not smoothed") double[] levelDb,
      @Schema(description = "Angle of the complex mean, degrees; null if unknown")
          double[] phaseDeg,
      @Schema(description = "Standard deviation with n − 1, dB") double[] sdDb,
      @Schema(description = "Median absolute deviation, dB, not scaled") double[] madDb,
      @Schema(description = "Curves at each point") int[] n,
      @Schema(description = "Every chosen unit, the odd ones first") List<Unit> members,
      @Schema(description = "Against the golden response of the active limit set; null without one")
          Comparison againstActive,
      @Schema(description = "A DSP setting against what its filters should give; null for others")
          Comparison againstExpected,
      @Schema(description = "How it was computed: sentences") List<String> method,
      @Schema(description = "What cannot be said, and why: sentences") List<String> notes,
      @Schema(description = "The draft that was stored; null in a preview") Saved saved) {
    Build with(Saved draft) {
      return new Build(
          product,
          tuning,
          units,
          curves,
          frequencyHz,
          levelDb,
          phaseDeg,
          sdDb,
          madDb,
          n,
          members,
          againstActive,
          againstExpected,
          method,
          notes,
          draft);
    }
  }

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Unit(
      UUID inspection,
      @Schema(example = "SG2-004217") String serial,
      boolean leftOut,
      boolean odd,
      @Schema(
              description = "Why it is odd: sentences",
              example =
                  "[\"Right earpiece lies 2.4 dB below the median at 8.5 kHz: 6.1 robust standard"
                      + " deviations (5.0 are expected at most).\"]")
          List<String> why,
      Earpiece left,
      Earpiece right) {}

  /**
   * @param typical median over the grid of |L − median|/s, s the robust standard deviation
   */
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Earpiece(
      boolean odd,
      @Schema(description = "Median over the grid of |L − median| in robust standard deviations")
          Double typical,
      @Schema(description = "Largest distance, robust standard deviations, signed") Double farthest,
      @Schema(description = "Largest |farthest| expected") Double farthestLimit,
      Double farthestAtHz,
      @Schema(description = "There, dB") Double farthestDb,
      @Schema(description = "Hotelling's T² on the first principal components; null if unknown")
          Double tSquared,
      Double tSquaredLimit,
      @Schema(description = "L − median, dB") double[] deviationDb) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Comparison(
      @Schema(example = "version 2", description = "What is compared") String which,
      @Schema(example = "version 1", description = "with what") String with,
      @Schema(description = "Hz") double[] frequencyHz,
      @Schema(description = "First − second, dB, not smoothed") double[] differenceDb,
      @Schema(description = "Its median over the grid, dB", example = "0.1") Double offsetDb,
      @Schema(description = "The largest difference in each region of the active limit set")
          List<RegionDifference> regions) {}

  record RegionDifference(
      @Schema(example = "treble") String name,
      @Schema(example = "5000") double fromHz,
      @Schema(example = "16000") double toHz,
      @Schema(example = "0.8", description = "Signed, dB") double largestDb,
      @Schema(example = "8500") double atHz,
      @Schema(example = "In treble, version 2 lies 0.8 dB above version 1 at 8.5 kHz at most.")
          String text) {}

  record Saved(
      @Schema(example = "2") int version,
      @Schema(example = "plain-golden.csv") String name,
      @Schema(example = "draft") String state,
      @Schema(example = "/api/products/sedge-2/tunings/plain/golden-responses/2") String href) {}
}
