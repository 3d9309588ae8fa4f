package evenpair.stations;

import static evenpair.stations.Requests.OPERATOR;
import static evenpair.stations.Requests.OPERATOR_RULE;
import static evenpair.stations.Requests.SERIAL;
import static evenpair.stations.Requests.SERIAL_RULE;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;

/** What clients send about reference units, verifications and blocks. */
final class VerificationRequests {
  static final String KEY = "[a-z0-9-]{1,64}";
  static final String KEY_RULE = "must be a key of 1 to 64 of a–z, 0–9 and -";
  private static final String STIMULUS_RULE = "must be the name of a stimulus";

  private VerificationRequests() {}

  /** Part {@code unit}. */
  @Schema(name = "ReferenceUnitRequest")
  record ReferenceUnit(
      @Schema(example = "REF-1")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String serial,
      @Schema(example = "sedge-2")
          @NotNull(message = KEY_RULE)
          @Pattern(regexp = KEY, message = KEY_RULE)
          String product,
      @Schema(example = "plain")
          @NotNull(message = KEY_RULE)
          @Pattern(regexp = KEY, message = KEY_RULE)
          String tuning,
      @Schema(example = "op-17")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(example = "sweep-48000", description = "for captures; by their sample rate if absent")
          @Pattern(regexp = KEY, message = STIMULUS_RULE)
          String stimulus,
      @Schema(example = "2026-11-25T06:40:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {}

  /** Part {@code verification}. */
  @Schema(name = "VerificationRequest")
  record Verification(
      @Schema(example = "sedge-2")
          @NotNull(message = KEY_RULE)
          @Pattern(regexp = KEY, message = KEY_RULE)
          String product,
      @Schema(example = "plain")
          @NotNull(message = KEY_RULE)
          @Pattern(regexp = KEY, message = KEY_RULE)
          String tuning,
      @Schema(example = "REF-1")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String referenceUnit,
      @Schema(example = "op-17")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(example = "sweep-48000", description = "for captures; by their sample rate if absent")
          @Pattern(regexp = KEY, message = STIMULUS_RULE)
          String stimulus,
      @Schema(example = "2026-11-25T06:55:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {}

  /** The body of a clearing. */
  @Schema(name = "ClearingRequest")
  record Clearing(
      @Schema(example = "eng-3", description = "the signed-in engineer, or nothing")
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String engineer,
      @Schema(
              example = "gain-restored",
              allowableValues = {
                "gain-restored",
                "part-replaced",
                "cleaned",
                "calibrator-at-fault",
                "reference-unit-at-fault",
                "seated-wrong",
                "checked-and-accepted"
              })
          @NotNull(message = "must be a word from the list")
          String reason) {}
}
