package evenpair.stations;

import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What the API says about a station's verifications, blocks and its own noise. */
final class TrustViews {
  private TrustViews() {}

  /**
   * @param cause what blocks the station
   * @param subject the calibration or verification that says so
   * @param channel {@code left}, {@code right} or null
   * @param region the region that strayed most, of a failed verification
   * @param measuredDb change or deviation, dB
   * @param limitDb what it may be, dB
   * @param text a sentence for people
   */
  @Schema(name = "StationBlock")
  record Block(
      @Schema(
              example = "verification-failed",
              allowableValues = {
                "microphone-changed",
                "output-changed",
                "verification-failed",
                "verification-missing"
              })
          String cause,
      UUID subject,
      String channel,
      String region,
      Instant since,
      @Schema(example = "0.8") Double measuredDb,
      @Schema(example = "0.5") Double limitDb,
      @Schema(
              example =
                  "Reference unit strays by +0.8 dB in region mid of the left channel (0.5 dB allowed). An engineer should"
                      + " look and clear the station.")
          String text) {}

  /** The newest verification of one tuning. */
  @Schema(name = "LastVerification")
  record LastVerification(
      UUID id,
      String product,
      String tuning,
      boolean passed,
      Instant measuredAt,
      Instant validUntil,
      boolean valid) {}

  /** A-weighted levels with nothing connected, dB(A) re 20 µPa. */
  @Schema(name = "IdleFloor")
  record IdleFloor(
      UUID id,
      String station,
      @Schema(example = "24.1") double leftDba,
      @Schema(example = "23.8") double rightDba,
      Instant measuredAt,
      Instant validUntil,
      boolean valid) {}

  /**
   * @param frequencyHz the 241 grid frequencies; left out of lists
   * @param leftDb certified level, dB SPL at the set's drive, unsmoothed; left out of lists
   */
  @Schema(name = "ReferenceUnit")
  @com.fasterxml.jackson.annotation.JsonInclude(
      com.fasterxml.jackson.annotation.JsonInclude.Include.NON_NULL)
  record ReferenceUnit(
      UUID id,
      String station,
      String serial,
      String product,
      String tuning,
      String earSimulator,
      Instant certifiedAt,
      Instant validUntil,
      boolean valid,
      double[] frequencyHz,
      float[] leftDb,
      float[] rightDb) {}

  @Schema(name = "ReferenceUnitList")
  record ReferenceUnits(List<ReferenceUnit> items) {}

  /**
   * @param referenceUnit its serial number
   * @param limitDb {@code verification-db} of the active limit set
   * @param cleared by whom a failed one was cleared; null if it was not
   */
  @Schema(name = "Verification")
  record Verification(
      UUID id,
      String station,
      String product,
      String tuning,
      String referenceUnit,
      boolean passed,
      double limitDb,
      List<Region> regions,
      Instant measuredAt,
      Instant validUntil,
      boolean valid,
      Clearing cleared) {}

  /**
   * @param deviationDb mean of measured less certified over the region, dB; null if not judged
   * @param farthestDb the largest single difference, dB, for information
   */
  @Schema(name = "VerificationRegion")
  record Region(
      String channel,
      String region,
      boolean judged,
      boolean passed,
      @Schema(example = "-0.12") Double deviationDb,
      @Schema(example = "0.41") Double farthestDb,
      @Schema(example = "8483.4") Double farthestHz) {}

  /**
   * @param engineer the name; null once it has been erased
   */
  @Schema(name = "Clearing")
  record Clearing(
      UUID id,
      @Schema(example = "verification-failed") String cause,
      UUID subject,
      @Schema(example = "gain-restored") String reason,
      String engineer,
      Instant clearedAt) {}

  @Schema(name = "ClearingList")
  record Clearings(List<Clearing> items) {}

  /**
   * @param items the newest 100, newest first
   * @param trends by tuning, certified curve, channel and region
   * @param method how the control limits were worked out
   */
  @Schema(name = "VerificationList")
  record Verifications(List<Verification> items, List<Trend> trends, String method) {}

  /**
   * A control chart of single values and moving ranges.
   *
   * @param chart null while there are too few points
   * @param note why there is no chart; null if there is one
   */
  @Schema(name = "VerificationTrend")
  record Trend(
      String product,
      String tuning,
      String referenceUnit,
      String channel,
      String region,
      double limitDb,
      Chart chart,
      String note,
      List<Point> points) {}

  /**
   * @param items one for each microphone and the output
   */
  @Schema(name = "CalibrationDrifts")
  record Drifts(List<Drift> items, String method) {}

  /**
   * @param what {@code microphone} or {@code output}
   * @param channel {@code left}, {@code right} or null for the output
   * @param unit of the levels: {@code dB SPL} of a sine that peaks at full scale, or {@code dBV}
   * @param limitDb largest change from one to the next that does not block the station
   * @param chart null while there are too few points
   */
  @Schema(name = "CalibrationDrift")
  record Drift(
      String what,
      String channel,
      @Schema(example = "dB SPL") String unit,
      double limitDb,
      Chart chart,
      String note,
      List<DriftPoint> points) {}

  /**
   * @param levelDb what full scale stands for
   * @param changeDb from the one before, as recorded; null for the first
   * @param changed whether that was beyond the limit
   */
  @Schema(name = "CalibrationDriftPoint")
  record DriftPoint(
      UUID id,
      Instant measuredAt,
      @Schema(example = "117.2") double levelDb,
      Double changeDb,
      boolean changed) {}

  @Schema(name = "ControlChart")
  record Chart(
      double centreDb, double lowerDb, double upperDb, double movingRangeUpperDb, int points) {}

  /**
   * @param movingRangeDb |this − the one before|; null for the first
   * @param signals outside the chart's limits; null without a chart
   */
  @Schema(name = "VerificationPoint")
  record Point(
      UUID verification,
      Instant measuredAt,
      double deviationDb,
      Double movingRangeDb,
      Boolean signals) {}
}
