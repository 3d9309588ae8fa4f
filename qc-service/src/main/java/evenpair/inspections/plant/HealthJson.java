package evenpair.inspections.plant;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/**
 * How the plant is doing, as JSON.
 *
 * @param at when it was asked
 * @param method how the shares were counted
 */
@Schema(name = "PlantHealth")
record HealthJson(Instant at, List<Station> stations, Service service, String method) {

  /**
   * @param state ready, problem (something is missing or has expired) or blocked
   * @param block null unless blocked
   * @param held null if the bench never said
   * @param heardAt null if nothing ever came
   */
  @Schema(name = "StationHealth")
  record Station(
      String station,
      @Schema(allowableValues = {"ready", "problem", "blocked"}) String state,
      Block block,
      List<Verdict> verdicts,
      FirstPass firstPass,
      Mountings mountings,
      List<Validity> calibrations,
      List<Verification> verifications,
      Held held,
      Instant heardAt) {}

  @Schema(name = "HealthBlock")
  record Block(String cause, Instant since, String text) {}

  @Schema(name = "LastVerdict")
  record Verdict(UUID inspection, String serial, String tuning, String verdict, Instant at) {}

  /**
   * @param share null without units
   * @param wilson 95 % interval of the share; null without units
   */
  @Schema(name = "FirstPassLately")
  record FirstPass(int passed, int of, Double share, double[] wilson, int minutes) {}

  /**
   * @param operators left out for those who may not read names
   */
  @Schema(name = "MountingsLately")
  @com.fasterxml.jackson.annotation.JsonInclude(
      com.fasterxml.jackson.annotation.JsonInclude.Include.NON_NULL)
  record Mountings(int attempts, int reseats, int minutes, List<Operator> operators) {}

  /**
   * @param operator the name; null once it has been erased
   */
  @Schema(name = "OperatorsMountings")
  record Operator(String operator, int attempts, int reseats) {}

  /**
   * @param validUntil null if never made
   * @param secondsLeft below 0 once expired; null if never made
   */
  @Schema(name = "CalibrationLeft")
  record Validity(
      @Schema(allowableValues = {"microphone-left", "microphone-right", "output", "correction"})
          String kind,
      Instant validUntil,
      Long secondsLeft) {}

  /**
   * @param state passed, failed, expired or missing
   */
  @Schema(name = "VerificationState")
  record Verification(
      String product,
      String tuning,
      @Schema(allowableValues = {"passed", "failed", "expired", "missing"}) String state,
      Instant validUntil) {}

  @Schema(name = "HeldNow")
  record Held(int count, Instant oldestAt, Instant reportedAt) {}

  /**
   * @param database null if it does not answer
   * @param disk null if it cannot be asked
   */
  @Schema(name = "ServiceHealth")
  record Service(
      String version,
      Database database,
      Disk disk,
      List<DropFolder> dropFolders,
      boolean hearsOtherProcesses) {}

  @Schema(name = "DatabaseHealth")
  record Database(double latencyMs, Ledger ledger, Events events, boolean oneRole) {}

  @Schema(name = "LedgerHealth")
  record Ledger(long unsealed, Instant oldestUnsealedAt, Instant lastBlockAt) {}

  @Schema(name = "EventsHealth")
  record Events(long unfinished, Instant oldestAt) {}

  @Schema(name = "DiskHealth")
  record Disk(long freeBytes, long totalBytes, long warnBelowBytes, boolean low) {}

  @Schema(name = "DropFolderHealth")
  record DropFolder(
      String station,
      boolean watching,
      int waiting,
      long taken,
      long refused,
      Instant lastTakenAt,
      String problem) {}
}
