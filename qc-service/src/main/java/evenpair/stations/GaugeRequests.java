package evenpair.stations;

import static evenpair.stations.Requests.OPERATOR;
import static evenpair.stations.Requests.OPERATOR_RULE;
import static evenpair.stations.Requests.SERIAL;
import static evenpair.stations.Requests.SERIAL_RULE;
import static evenpair.stations.VerificationRequests.KEY;
import static evenpair.stations.VerificationRequests.KEY_RULE;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.constraints.Max;
import jakarta.validation.constraints.Min;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Pattern;
import jakarta.validation.constraints.Size;
import java.util.List;

/** What clients send about gauge studies. */
final class GaugeRequests {
  private GaugeRequests() {}

  /** The body of a plan. */
  @Schema(name = "GaugePlanRequest")
  record Plan(
      @Schema(example = "sedge-2")
          @NotNull(message = KEY_RULE)
          @Pattern(regexp = KEY, message = KEY_RULE)
          String product,
      @Schema(example = "plain")
          @NotNull(message = KEY_RULE)
          @Pattern(regexp = KEY, message = KEY_RULE)
          String tuning,
      @Schema(
              description = "serial numbers of the parts; ten are usual",
              example = "[\"SG2-004201\", \"SG2-004202\", \"SG2-004203\"]")
          @NotNull(message = PARTS_RULE)
          @Size(min = 2, max = 50, message = PARTS_RULE)
          List<
                  @NotNull(message = SERIAL_RULE) @Pattern(regexp = SERIAL, message = SERIAL_RULE)
                  String>
              parts,
      @Schema(
              description = "who measures; either this or stations",
              example = "[\"op-17\", \"op-18\"]")
          @Size(min = 2, max = 10, message = APPRAISERS_RULE)
          List<
                  @NotNull(message = OPERATOR_RULE)
                  @Pattern(regexp = OPERATOR, message = OPERATOR_RULE) String>
              operators,
      @Schema(
              description =
                  "where it is measured, this station among them; either this or operators")
          @Size(min = 2, max = 10, message = APPRAISERS_RULE)
          List<@NotNull(message = KEY_RULE) @Pattern(regexp = KEY, message = KEY_RULE) String>
              stations,
      @Schema(example = "3", description = "how often each mounts and measures each part")
          @NotNull(message = SEATINGS_RULE)
          @Min(value = 2, message = SEATINGS_RULE)
          @Max(value = 10, message = SEATINGS_RULE)
          Integer seatings,
      @Schema(example = "eng-3", description = "who plans it")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator) {
    private static final String PARTS_RULE = "must be 2 to 50 serial numbers";
    private static final String APPRAISERS_RULE = "must be 2 to 10 names";
    private static final String SEATINGS_RULE = "must be a whole number from 2 to 10";
  }

  /** Part {@code capture}. */
  @Schema(name = "GaugeCaptureRequest")
  record Capture(
      @Schema(example = "SG2-004201")
          @NotNull(message = SERIAL_RULE)
          @Pattern(regexp = SERIAL, message = SERIAL_RULE)
          String part,
      @Schema(example = "op-17", description = "who measures")
          @NotNull(message = OPERATOR_RULE)
          @Pattern(regexp = OPERATOR, message = OPERATOR_RULE)
          String operator,
      @Schema(description = "where; the station of the address if absent")
          @Pattern(regexp = KEY, message = KEY_RULE)
          String station,
      @Schema(example = "1")
          @NotNull(message = SEATING_RULE)
          @Min(value = 1, message = SEATING_RULE)
          @Max(value = 10, message = SEATING_RULE)
          Integer seating,
      @Schema(example = "sweep-48000", description = "by the captures' sample rate if absent")
          @Pattern(regexp = KEY, message = "must be the name of a stimulus")
          String stimulus,
      @Schema(example = "2026-11-25T07:00:00Z", description = "ISO 8601; now if absent")
          String measuredAt) {
    private static final String SEATING_RULE = "must be a whole number from 1 to 10";
  }
}
