package evenpair.batches;

import evenpair.batches.GoldenJson.Build;
import evenpair.batches.GoldenJson.BuildRequest;
import evenpair.batches.GoldenJson.Comparison;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.net.URI;
import java.util.Locale;
import org.springframework.http.MediaType;
import org.springframework.http.ResponseEntity;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.PostMapping;
import org.springframework.web.bind.annotation.RequestBody;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor(Caller.ENGINEER)
@RequestMapping("/api/products/{product}/tunings/{tuning}/golden-responses")
@Tag(name = "products")
class GoldenBuildController {
  private static final String PREVIEW =
      """
      {"batch": "SW-2647", "leaveOut": ["019ac1de-5c00-7000-8000-000000000017"]}\
      """;
  private static final String SAVE =
      """
      {"batch": "SW-2647", "leaveOut": [], "save": true, "author": "qe-1", "name": "plain-golden.csv"}\
      """;
  private static final String TWICE =
      """
      {"type": "/problems/same-unit-twice", "title": "Same unit twice", "status": 422,
       "detail": "Unit SG2-004217 is there twice: it would count double.", "field": "inspections"}\
      """;

  private final GoldenBuilder builder;
  private final GoldenComparisons comparisons;
  private final Texts texts;

  GoldenBuildController(GoldenBuilder builder, GoldenComparisons comparisons, Texts texts) {
    this.builder = builder;
    this.comparisons = comparisons;
    this.texts = texts;
  }

  @PostMapping(path = "/builds", consumes = MediaType.APPLICATION_JSON_VALUE)
  @Operation(
      summary = "Builds a golden response from measured units: a preview, or with save a new draft",
      description =
          "At each grid point the median over both channels of all units, each unit the mean of its"
              + " valid seatings, not smoothed; phase from the complex mean. Units that lie far from"
              + " the others are listed with why, and left out only if the request says so. A DSP"
              + " setting is compared with what its filters should make of the tuning it comes"
              + " from.",
      requestBody =
          @io.swagger.v3.oas.annotations.parameters.RequestBody(
              required = true,
              content =
                  @Content(
                      mediaType = MediaType.APPLICATION_JSON_VALUE,
                      examples = {
                        @ExampleObject(name = "preview", value = PREVIEW),
                        @ExampleObject(name = "save", value = SAVE)
                      })))
  @ApiResponse(responseCode = "200", description = "The preview; nothing was stored")
  @ApiResponse(responseCode = "201", description = "Built, and stored as a draft to be signed off")
  @ApiResponse(
      responseCode = "404",
      description = "No such product, tuning or batch",
      content = @Content)
  @ApiResponse(
      responseCode = "409",
      description = "That very response is stored already",
      content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "What cannot be pooled or saved, and why",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(TWICE)))
  ResponseEntity<Build> build(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "plain") @PathVariable("tuning") String tuning,
      @RequestBody BuildRequest request,
      Locale locale) {
    Build build = builder.build(product, tuning, request, new GoldenWords(texts, locale));
    return build.saved() == null
        ? ResponseEntity.ok(build)
        : ResponseEntity.created(URI.create(build.saved().href())).body(build);
  }

  @AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
  @GetMapping("/{version}/comparison")
  @Operation(
      summary = "One version against another: difference curve, largest difference by region",
      description = "Difference = this version − the other, dB, not smoothed.")
  @ApiResponse(responseCode = "200", description = "The comparison")
  @ApiResponse(
      responseCode = "404",
      description = "No such product, tuning or version",
      content = @Content)
  Comparison compare(
      @Parameter(example = "sedge-2") @PathVariable("product") String product,
      @Parameter(example = "plain") @PathVariable("tuning") String tuning,
      @Parameter(example = "2") @PathVariable("version") int version,
      @Parameter(example = "1", description = "the other version") @RequestParam("with") int with,
      Locale locale) {
    return comparisons.versions(product, tuning, version, with, new GoldenWords(texts, locale));
  }
}
