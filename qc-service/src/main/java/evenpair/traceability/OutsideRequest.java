package evenpair.traceability;

import io.swagger.v3.oas.annotations.media.Schema;
import jakarta.validation.Valid;
import jakarta.validation.constraints.DecimalMax;
import jakarta.validation.constraints.DecimalMin;
import jakarta.validation.constraints.Size;
import java.time.LocalDate;
import java.util.UUID;

/**
 * What comes with the curves of an outside report. Everything may be missing: it is then asked for.
 */
@Schema(name = "OutsideReportRequest")
record OutsideRequest(
    @Schema(description = "Needed if the unit was measured in several", example = "plain")
        String tuning,
    @Schema(description = "Ours to hold it against; the newest closed one of the tuning if missing")
        UUID inspection,
    @Valid Rig rig,
    @Valid Source source) {

  /** How it was measured, as far as is known. */
  @Schema(name = "OutsideRig")
  record Rig(
      @Schema(
              description =
                  "Standard type of the ear simulator; \"other\" for one that is known to be none of ours",
              example = "IEC 60318-4")
          String earSimulator,
      @Schema(description = "U (k = 2) of their left − right, dB", example = "1.0")
          @DecimalMin("0.05")
          @DecimalMax("20")
          Double uncertaintyDb,
      @Schema(description = "Whether each channel was shifted in level for itself")
          Boolean levelled) {}

  /** Who says so; never sealed, can be erased. */
  @Schema(name = "OutsideSource")
  record Source(@Size(min = 1, max = 200) String name, LocalDate publishedOn) {}
}
