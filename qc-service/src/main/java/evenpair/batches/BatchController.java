package evenpair.batches;

import evenpair.batches.BatchJson.Batch;
import evenpair.batches.BatchJson.Curves;
import evenpair.batches.BatchJson.Items;
import evenpair.batches.BatchJson.Statistics;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.products.Products;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.media.ExampleObject;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springdoc.core.annotations.ParameterObject;
import org.springframework.http.MediaType;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;
import org.springframework.web.util.UriComponentsBuilder;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Batches", description = "Yield, reasons and curve statistics of a batch")
class BatchController {
  private static final int MOST_UNITS = 500;
  private static final List<String> FURTHER =
      List.of("capability", "charts", "components", "stations", "curves", "risks");
  private static final String MIXED =
      """
      {"type": "/problems/mixed-batch", "title": "Mixed batch", "status": 422,
       "detail": "Batch SW-2647 holds 4 parts that cannot be compared with each other. Choose one with product, tuning and limitSet.",
       "choices": [{"product": "sedge-2", "tuning": "plain"}, {"product": "sedge-2", "tuning": "warm"}]}\
      """;

  private final Inspections inspections;
  private final Products products;
  private final Selection selection;
  private final Texts texts;

  BatchController(Inspections inspections, Products products, Selection selection, Texts texts) {
    this.inspections = inspections;
    this.products = products;
    this.selection = selection;
    this.texts = texts;
  }

  @GetMapping("/api/batches")
  @Operation(summary = "Batches with judged units, newest first")
  Items<Batch> batches() {
    return new Items<>(inspections.batches().stream().map(this::batch).toList());
  }

  @GetMapping("/api/batches/{batch}/statistics")
  @Operation(
      summary = "Yield, ranked reasons and statistics at every grid point",
      description =
          "Each unit counts once, by its first closed inspection in the tuning. Says in notes what"
              + " too few units cannot tell.")
  @ApiResponse(responseCode = "200", description = "The figures")
  @ApiResponse(responseCode = "404", description = "No such batch", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "More than one product, tuning or limit set: choices names them",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(MIXED)))
  Statistics statistics(
      @Parameter(example = "SW-2647") @PathVariable String batch,
      @ParameterObject Part part,
      Locale locale) {
    return new BatchFigures(texts, locale)
        .statistics(batch, selection.of(batch, part), links(batch, part));
  }

  @GetMapping("/api/batches/{batch}/curves")
  @Operation(
      summary = "Every unit's deviation and left − right curve",
      description =
          "Deviation d = L − G − a of each channel, smoothed as judged, dB. Where there are more"
              + " units than limit, an even choice over production order that holds the first and"
              + " the last.")
  @ApiResponse(responseCode = "200", description = "The curves")
  @ApiResponse(responseCode = "404", description = "No such batch", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "More than one product, tuning or limit set: choices names them",
      content =
          @Content(
              mediaType = MediaType.APPLICATION_PROBLEM_JSON_VALUE,
              examples = @ExampleObject(MIXED)))
  Curves curves(
      @Parameter(example = "SW-2647") @PathVariable String batch,
      @ParameterObject Part part,
      @Parameter(example = "200", description = "most units wanted, 1 to 500")
          @RequestParam(defaultValue = "500")
          int limit) {
    if (limit < 1 || limit > MOST_UNITS) {
      throw new Refusal(
              400, "invalid-parameter", "limit must be 1 to " + MOST_UNITS + ", was " + limit + ".")
          .with("field", "limit")
          .with("expected", "1 to " + MOST_UNITS);
    }
    return BatchFigures.curves(selection.of(batch, part), limit);
  }

  private static Map<String, String> links(String batch, Part part) {
    Map<String, String> links = new LinkedHashMap<>();
    for (String figures : FURTHER) {
      UriComponentsBuilder address =
          UriComponentsBuilder.fromPath("/api/batches").pathSegment(batch, figures);
      part.asQuery().forEach(address::queryParam);
      links.put(figures, address.encode().build().toUriString());
    }
    return links;
  }

  private Batch batch(BatchSummary summary) {
    String name =
        products.find(summary.product()).map(Products.Product::name).orElse(summary.product());
    return new Batch(
        summary.batch(),
        summary.product(),
        name,
        summary.tunings(),
        summary.limitSets(),
        summary.units(),
        summary.lastAt());
  }
}
