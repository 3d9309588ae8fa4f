package evenpair.batches;

import evenpair.batches.ProposalJson.ProposalRequest;
import evenpair.batches.ProposalJson.ProposalView;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Locale;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.ModelAttribute;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@Tag(name = "Batches")
class ProposalController {
  private static final String EXAMPLE =
      """
      {"yield": 0.98, "confidence": 0.95, "of": "all", "neverWider": false, "keep": []}\
      """;

  private final Trials trials;
  private final Proposals proposals;

  ProposalController(Trials trials, Proposals proposals) {
    this.trials = trials;
    this.proposals = proposals;
  }

  @PostMapping(path = "/api/batches/{batch}/proposals", consumes = MediaType.APPLICATION_JSON_VALUE)
  @AllowedFor(Caller.ENGINEER)
  @Operation(
      summary = "Proposes limits that a wanted share of units keeps, with a stated confidence",
      description =
          "Free of any assumption on the distribution (Wilks): one half of the units tells centre"
              + " and spread, the other how far the limits must be. Says how many units are missing"
              + " when it cannot promise, and what may break the promise. Stores nothing.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content =
                  @Content(
                      mediaType = MediaType.APPLICATION_JSON_VALUE,
                      examples = @ExampleObject(EXAMPLE))))
  @ApiResponse(responseCode = "200", description = "The proposal, or what it misses")
  @ApiResponse(responseCode = "404", description = "No such batch or version", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "Batches with more than one product or tuning, or units that lie too far off",
      content = @Content)
  ProposalView propose(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @ParameterObject @ModelAttribute TrialRequest units,
      @Parameter(
              example = "3",
              description = "version whose regions the limits are for; the active one without it")
          @RequestParam(name = "version", required = false)
          Integer version,
      @RequestBody ProposalRequest request,
      Locale locale) {
    return proposals.propose(trials.prepare(batch, units, new byte[0], version), request, locale);
  }
}
