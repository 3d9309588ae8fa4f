package evenpair.batches;

import evenpair.batches.RiskJson.Risks;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.products.Products;
import evenpair.tolerance.LimitSet;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.Parameter;
import io.swagger.v3.oas.annotations.media.Content;
import io.swagger.v3.oas.annotations.responses.ApiResponse;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.util.Locale;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.PathVariable;
import org.springframework.web.bind.annotation.RequestParam;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.ENGINEER, Caller.ADMINISTRATOR})
@Tag(name = "Batches")
class RiskController {
  private final Selection selection;
  private final Products products;
  private final BatchMeasurement measurement;
  private final Texts texts;

  RiskController(
      Selection selection, Products products, BatchMeasurement measurement, Texts texts) {
    this.selection = selection;
    this.products = products;
    this.measurement = measurement;
    this.texts = texts;
  }

  @GetMapping("/api/batches/{batch}/risks")
  @Operation(
      summary = "Consumer's and producer's risk of the limit set, by region",
      description =
          "Shares of all units that are accepted though out of tolerance, and rejected though in"
              + " tolerance (JCGM 106), from the batch's first-pass spread and the uncertainty"
              + " budgets of its stations. Says in notes where they cannot be told.")
  @ApiResponse(responseCode = "200", description = "The risks")
  @ApiResponse(responseCode = "404", description = "No such batch", content = @Content)
  @ApiResponse(
      responseCode = "422",
      description = "More than one product, tuning or limit set: choices names them",
      content = @Content)
  Risks risks(
      @Parameter(example = "SW-2647") @PathVariable("batch") String batch,
      @Parameter(example = "sedge-2") @RequestParam(name = "product", required = false)
          String product,
      @Parameter(example = "plain") @RequestParam(name = "tuning", required = false) String tuning,
      @Parameter(example = "3", description = "version")
          @RequestParam(name = "limitSet", required = false)
          Integer limitSet,
      Locale locale) {
    BatchCurves curves = selection.of(batch, product, tuning, limitSet);
    LimitSet set =
        products
            .limitSet(curves.product(), curves.tuning(), curves.limitSets().get(0))
            .orElseThrow()
            .set();
    return new RiskFigures(texts, locale)
        .risks(
            batch,
            curves,
            set,
            measurement.shares(
                FirstPass.of(curves).drawn(),
                curves.product(),
                curves.tuning(),
                set.seating().count()));
  }
}
