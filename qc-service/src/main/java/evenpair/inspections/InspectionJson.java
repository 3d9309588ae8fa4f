package evenpair.inspections;

import com.fasterxml.jackson.annotation.JsonInclude;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionView;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * The JSON of an inspection. In lists {@code regions}, {@code attempts} and {@code idleNoise} are
 * left out.
 */
@Schema(name = "Inspection")
record InspectionJson(
    UUID id,
    @Schema(example = "SG2-004217") String serial,
    @Schema(example = "SW-2647") String batch,
    @Schema(example = "sedge-2") String product,
    @Schema(example = "Sedge 2") String productName,
    @Schema(example = "Saltmarsh Works") String maker,
    @Schema(example = "plain") String tuning,
    @Schema(example = "bench-1") String station,
    @Schema(example = "production") String occasion,
    @Schema(description = "open, closed or abandoned", example = "closed") String state,
    @Schema(description = "PASS or FAIL once closed, else null", example = "PASS") String verdict,
    @Schema(description = "true: by a guarded rule, a result lies inside the guard band")
        boolean conditional,
    @Schema(
            description =
                "PASS, FAIL, RESEAT or INVALID; null after a good seating when more are wanted",
            example = "PASS")
        String lastAttempt,
    @Schema(description = "done, reseat or another-seating", example = "done") String next,
    LimitSet limitSet,
    @Schema(example = "IEC 60318-4") String earSimulator,
    Instant startedAt,
    @Schema(description = "when closed or abandoned") Instant closedAt,
    @Schema(description = "why it was abandoned, else null") String abandonedBecause,
    String softwareVersion,
    Seatings seatings,
    List<ReasonView> reasons,
    @JsonInclude(JsonInclude.Include.NON_NULL) List<RegionView> regions,
    @JsonInclude(JsonInclude.Include.NON_NULL) List<Attempt> attempts,
    @JsonInclude(JsonInclude.Include.NON_NULL) IdleNoise idleNoise,
    Unit unit,
    Links links) {

  @Schema(name = "LimitSetReference")
  record LimitSet(int version, String digest) {}

  /**
   * @param tries mountings so far
   * @param allowed mountings allowed
   * @param spreadDb how far the valid seatings lie apart, by region and channel; empty for one
   *     seating or while open
   * @param depthTold false: the golden response has two peaks near each other, so a wrong insertion
   *     depth cannot be told; left out of lists
   */
  record Seatings(
      int valid,
      int wanted,
      int tries,
      int allowed,
      List<SpreadView> spreadDb,
      @JsonInclude(JsonInclude.Include.NON_NULL) Boolean depthTold) {}

  @Schema(
      name = "SeatingSpread",
      description = "largest difference between the valid seatings in a region, dB, and where")
  record SpreadView(String region, String channel, double db, double atHz) {}

  @Schema(name = "IdleNoise", description = "by channel; null without a usable idle recording")
  record IdleNoise(ChannelNoise left, ChannelNoise right) {}

  /**
   * @param floorDba the station's own; null if it was never measured
   */
  @Schema(name = "ChannelIdleNoise")
  record ChannelNoise(
      @Schema(description = "A-weighted, dB re 20 µPa") double dba,
      Double floorDba,
      List<NoiseTone> tones) {}

  @Schema(name = "IdleNoiseTone")
  record NoiseTone(
      double hz,
      @Schema(description = "dB above the median of its ± 1/3 octave") double levelDb,
      @Schema(description = "true: where USB frames sound, a multiple of 1 kHz")
          boolean usbFrame) {}

  record Attempt(
      int number,
      int seating,
      @Schema(description = "PASS, FAIL, VALID (a good seating, more wanted), RESEAT or INVALID")
          String outcome,
      String station,
      Instant measuredAt,
      Instant receivedAt,
      String stimulus,
      File left,
      File right,
      @Schema(description = "of the idle recording, null if none was sent") String idleLeftSha256,
      String idleRightSha256,
      List<ReasonView> reasons) {}

  @Schema(name = "CaptureFile")
  record File(String sha256, long bytes) {}

  @Schema(name = "UnitState")
  record Unit(
      @Schema(description = "PASS, FAIL or INCOMPLETE over the tunings that the product requires")
          String verdict,
      List<String> passed,
      List<String> missing,
      List<String> failed) {}

  record Links(String self, String curves, String certificate, String unit) {}
}
