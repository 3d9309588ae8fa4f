package evenpair.batches;

import com.fasterxml.jackson.annotation.JsonInclude;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.List;

/** What a proposal asks and answers. */
final class ProposalJson {
  private ProposalJson() {}

  /**
   * @param yield p wanted @param confidence γ @param of all or passed @param keep limits that stay
   */
  record ProposalRequest(
      @Schema(description = "share of units that shall pass", example = "0.98") Double yield,
      @Schema(description = "confidence of the promise", example = "0.95") Double confidence,
      @Schema(
              description =
                  "which units the limits are for: all, or those that pass what is recorded",
              example = "all",
              allowableValues = {"all", "passed"})
          String of,
      @Schema(description = "no limit wider than it is now; ends the promise; false if absent")
          Boolean neverWider,
      @Schema(description = "limits left as they are; ends the promise", example = "[\"level\"]")
          List<String> keep) {
    ProposalRequest {
      neverWider = Boolean.TRUE.equals(neverWider);
      keep = keep == null ? List.of() : List.copyOf(keep);
    }
  }

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record ProposalView(
      @Schema(description = "null where the promise cannot be kept with these units")
          TrialJson.TriedSet limitSet,
      @Schema(description = "whether the wanted share is promised, not only predicted")
          boolean promised,
      @Schema(description = "The promise, or why there is none, in a sentence") String words,
      Wanted wanted,
      Used used,
      Missing missing,
      @Schema(description = "t: every limit is so many times its own spread from the centre")
          Double scale,
      @Schema(description = "Yield of the proposed set on the very units; null without a set")
          TrialJson.Share predicted,
      @Schema(description = "What may break the promise: sentences") List<String> warnings) {}

  record Wanted(double yield, double confidence) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Used(
      int units,
      @Schema(description = "tell centre and spread") int firstHalf,
      @Schema(description = "tell how far the limits must be") int secondHalf,
      @Schema(description = "k: the limit is the k-th smallest of the second half") Integer rank,
      List<String> batches) {}

  @JsonInclude(JsonInclude.Include.ALWAYS)
  record Missing(
      @Schema(description = "units that the second half needs", example = "149")
          int secondHalfNeeds,
      @Schema(description = "and all in all", example = "298") int needed,
      @Schema(description = "further units to measure; 0 if there are enough") int units,
      @Schema(description = "the yield that these units can promise at that confidence")
          Double canPromise) {}
}
