package evenpair.stations;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** What the API says about a station. */
final class Views {
  private Views() {}

  /**
   * A station at a glance.
   *
   * @param state {@code ready}, {@code needs-calibration} (something is missing or expired) or
   *     {@code blocked} (it may not judge until what {@code blocks} says is settled)
   * @param blocks what an engineer has to clear, or a second calibration to confirm
   * @param needs what keeps it from being ready, one sentence each
   * @param microphones by channel; null for one never calibrated
   * @param verifications the newest of each tuning
   * @param idleFloor its own noise with nothing connected; null if never measured
   */
  @Schema(name = "StationState")
  record Station(
      @Schema(example = "bench-1") String station,
      String note,
      Instant createdAt,
      @Schema(
              example = "ready",
              allowableValues = {"ready", "needs-calibration", "blocked"})
          String state,
      List<TrustViews.Block> blocks,
      List<Need> needs,
      Map<String, Microphone> microphones,
      Output output,
      Correction correction,
      List<TrustViews.LastVerification> verifications,
      TrustViews.IdleFloor idleFloor) {}

  /**
   * @param what {@code microphone}, {@code output}, {@code correction} or, where the plant demands
   *     it, {@code verification}
   * @param channel {@code left}, {@code right} or null
   * @param why {@code missing} or {@code expired}
   */
  @Schema(name = "StationNeed")
  record Need(String what, String channel, String why, String text) {}

  @Schema(name = "StationList")
  record Stations(List<Station> items) {}

  /**
   * @param pascalPerFullScale sound pressure (instantaneous, Pa) that a sample of 1.0 stands for
   * @param fullScaleLevelDb level of a sine whose peak is full scale, dB re 20 µPa
   * @param calibratorUncertaintyDb expanded uncertainty (k = 2) of the stated level; null if not
   *     stated
   */
  @Schema(name = "MicrophoneCalibration")
  record Microphone(
      UUID id,
      String station,
      String channel,
      String earSimulator,
      String earSimulatorSerial,
      String calibratorSerial,
      @Schema(example = "20.41") double pascalPerFullScale,
      @Schema(example = "117.2") double fullScaleLevelDb,
      double statedLevelDb,
      double statedFrequencyHz,
      Double calibratorUncertaintyDb,
      Tone tone,
      Change change,
      Instant measuredAt,
      Instant validUntil,
      boolean valid) {}

  /** The tone as it was read. */
  @Schema(name = "CalibrationTone")
  record Tone(
      double amplitudeDbfs,
      double frequencyHz,
      double distortionPercent,
      double driftDb,
      String sha256) {}

  /**
   * @param db change from the calibration before, null for the first
   * @param state {@code first}, {@code steady} or {@code changed}
   * @param text what a change means; null unless changed
   */
  @Schema(name = "CalibrationChange")
  record Change(
      Double db,
      @Schema(allowableValues = {"first", "steady", "changed"}) String state,
      String text) {}

  /**
   * @param voltsPerFullScale voltage (instantaneous, V) at the earphone's terminals for a sample of
   *     1.0
   * @param fullScaleVoltsRms voltage of a sine whose peak is full scale, V r.m.s.
   */
  @Schema(name = "OutputCalibration")
  record Output(
      UUID id,
      String station,
      @Schema(example = "1.0112") double voltsPerFullScale,
      @Schema(example = "0.715") double fullScaleVoltsRms,
      double toneDbfs,
      double frequencyHz,
      double readingMvRms,
      String meterSerial,
      Change change,
      Instant measuredAt,
      Instant validUntil,
      boolean valid) {}

  /**
   * @param scatterDb standard deviation between seatings, r.m.s. over 100 Hz to 8 kHz
   * @param meanDb mean of the correction over 300 Hz to 3 kHz
   * @param frequencyHz the 241 grid frequencies; left out of lists
   * @param leftMinusRightDb the station's own left − right difference; left out of lists
   * @param uncertaintyDb its standard uncertainty; left out of lists
   */
  @Schema(name = "StationCorrection")
  @JsonInclude(JsonInclude.Include.NON_NULL)
  record Correction(
      UUID id,
      String station,
      int version,
      String referenceUnit,
      String stimulus,
      double scatterDb,
      double meanDb,
      Instant measuredAt,
      Instant validUntil,
      boolean valid,
      double[] frequencyHz,
      float[] leftMinusRightDb,
      float[] uncertaintyDb) {
    Correction withoutCurves() {
      return new Correction(
          id,
          station,
          version,
          referenceUnit,
          stimulus,
          scatterDb,
          meanDb,
          measuredAt,
          validUntil,
          valid,
          null,
          null,
          null);
    }
  }
}
