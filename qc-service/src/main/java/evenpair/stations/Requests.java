package evenpair.stations;

import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;

/** What clients send about a station. Each constraint's message says what the field must be. */
final class Requests {
  static final String SERIAL = "[\\p{L}\\p{Nd}._-]{1,64}";
  static final String SERIAL_RULE = "must be 1 to 64 letters, digits and . _ -";
  static final String OPERATOR = "(?=.*\\S)[^\\p{Cntrl}]{1,64}";
  static final String OPERATOR_RULE = "must be a name or badge of 1 to 64 characters";

  private Requests() {}

  /** The station's own description. */
  @Schema(name = "StationRequest")
  record Station(
      @Schema(example = "Hall 2, by the window")
          @Pattern(
              regexp = "(?=.*\\S)[^\\p{Cntrl}]{1,200}",
              message = "must be a text of 1 to 200 characters, or none")
          String note) {}

  /** Part {@code calibration}. */
  @Schema(name = "CalibrationRequest")
  record Calibration(
      @Schema(example = "left")
          @NotNull(message = "must be left or right")
          @Pattern(regexp = "left|right", message = "must be left or right")
          String channel,
      @Schema(example = "IEC 60318-4", description = "type of the ear simulator, by its standard")
          @NotNull(message = "must be the standard's name, such as IEC 60318-4")
          String earSimulator,
      @Schema(example = "ES-101")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String earSimulatorSerial,
      @Schema(example = "SC-7")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String calibratorSerial,
      @Schema(example = "94.0", description = "the calibrator's stated level, dB re 20 µPa")
          @NotNull(message = LEVEL_RULE)
          @DecimalMin(value = "60", message = LEVEL_RULE)
          @DecimalMax(value = "140", message = LEVEL_RULE)
          Double levelDb,
      @Schema(example = "1000", description = "the calibrator's stated frequency, Hz")
          @NotNull(message = TONE_RULE)
          @DecimalMin(value = "100", message = TONE_RULE)
          @DecimalMax(value = "4000", message = TONE_RULE)
          Double frequencyHz,
      @Schema(
              example = "0.2",
              description =
                  "expanded uncertainty (k = 2) of that level by the calibrator's certificate, dB;"
                      + " the plant's usual one if absent")
          @DecimalMin(value = "0.01", message = UNCERTAINTY_RULE)
          @DecimalMax(value = "3", message = UNCERTAINTY_RULE)
          Double calibratorUncertaintyDb,
      @Schema(example = "op-17")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(example = "2026-11-25T06:40:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {
    private static final String UNCERTAINTY_RULE = "must be an uncertainty from 0.01 to 3 dB";
    private static final String LEVEL_RULE = "must be a level from 60 to 140 dB re 20 µPa";
    private static final String TONE_RULE = "must be a frequency from 100 to 4000 Hz";
  }

  /** The body of an output calibration. */
  @Schema(name = "OutputCalibrationRequest")
  record OutputCalibration(
      @Schema(example = "-12", description = "peak of the played tone re digital full scale, dB")
          @NotNull(message = LEVEL_RULE)
          @DecimalMin(value = "-60", message = LEVEL_RULE)
          @DecimalMax(value = "0", message = LEVEL_RULE)
          Double toneDbfs,
      @Schema(example = "1000")
          @NotNull(message = TONE_RULE)
          @DecimalMin(value = "20", message = TONE_RULE)
          @DecimalMax(value = "20000", message = TONE_RULE)
          Double frequencyHz,
      @Schema(
              example = "179.6",
              description = "what the meter shows at the earphone's terminals, mV r.m.s.")
          @NotNull(message = READING_RULE)
          @DecimalMin(value = "0.01", message = READING_RULE)
          @DecimalMax(value = "20000", message = READING_RULE)
          Double readingMvRms,
      @Schema(example = "VM-3")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String meterSerial,
      @Schema(example = "op-17")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(example = "2026-11-25T06:45:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {
    private static final String LEVEL_RULE = "must be a level from -60 to 0 dB re full scale";
    private static final String TONE_RULE = "must be a frequency from 20 to 20000 Hz";
    private static final String READING_RULE = "must be a voltage from 0.01 to 20000 mV r.m.s.";
  }

  /** Part {@code correction}. */
  @Schema(name = "CorrectionRequest")
  record Correction(
      @Schema(example = "REF-1", description = "serial number of the reference pair")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String referenceUnit,
      @Schema(example = "op-17")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(
              example = "sweep-48000",
              description = "the standard sweep at the captures' sample rate if absent")
          @Pattern(regexp = "[a-z0-9-]{1,64}", message = "must be the name of a stimulus")
          String stimulus,
      @Schema(example = "2026-11-25T06:50:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {}

  /** Part {@code idleFloor}. */
  @Schema(name = "IdleFloorRequest")
  record IdleFloor(
      @Schema(example = "op-17")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(example = "2026-11-25T06:50:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {}

  /**
   * @param sent as the client wrote it, or null for now
   * @param tolerance how far it may lie in the future: clocks differ
   * @throws Refusal 400 if it is not a time, 422 if it has not come yet
   */
  static Instant measuredAt(String sent, Instant now, Duration tolerance) {
    if (sent == null) {
      return now;
    }
    String expected = "an ISO 8601 time with its zone, such as 2026-11-25T07:00:00Z";
    Instant at;
    try {
      at = OffsetDateTime.parse(sent).toInstant();
    } catch (DateTimeException e) {
      throw new Refusal(
              400,
              "invalid-field",
              "The field 'measuredAt' is not a time; expected: " + expected + ".")
          .with("field", "measuredAt")
          .with("expected", expected);
    }
    if (at.isAfter(now.plus(tolerance))) {
      throw new Refusal(
              422,
              "measured-in-the-future",
              "The field 'measuredAt' says "
                  + at
                  + ", but it is "
                  + now
                  + " now: one of the clocks is wrong.")
          .with("field", "measuredAt")
          .with("expected", "at most " + now.plus(tolerance));
    }
    return at;
  }
}
