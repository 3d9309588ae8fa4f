package evenpair.traceability;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** What requests and answers of dispatches look like. */
final class DispatchJson {
  private DispatchJson() {}

  @Schema(name = "DispatchRequest")
  record Request(
      @Schema(description = "the maker's own number, once", example = "DN-2026-0117")
          String reference,
      @Schema(description = "left out: now") Instant shippedAt,
      @Schema(example = "[\"SG2-004217\", \"SG2-004231\"]") List<String> serials) {}

  /**
   * @param notPassed units that had no PASS when it was recorded
   * @param alsoIn units that are in another dispatch too
   * @param items its units; left out of lists
   */
  @Schema(name = "Dispatch")
  record Dispatch(
      UUID id,
      String reference,
      Instant shippedAt,
      Instant recordedAt,
      int units,
      @JsonInclude(JsonInclude.Include.NON_NULL) List<Unit> items,
      @JsonInclude(JsonInclude.Include.NON_NULL) List<String> notPassed,
      @JsonInclude(JsonInclude.Include.NON_NULL) List<String> alsoIn,
      @JsonInclude(JsonInclude.Include.NON_NULL) List<String> notes) {}

  @Schema(name = "DispatchedUnit")
  record Unit(
      String serial, @Schema(description = "when the dispatch was recorded") String verdict) {}
}
