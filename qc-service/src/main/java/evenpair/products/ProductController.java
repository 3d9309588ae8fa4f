package evenpair.products;

import evenpair.products.GoldenViews.ProcessingView;
import evenpair.products.ProductDefinition.TuningDefinition;
import evenpair.products.Products.StoredLimitSet;
import evenpair.web.AllowedFor;
import evenpair.web.Caller;
import io.swagger.v3.oas.annotations.Operation;
import io.swagger.v3.oas.annotations.media.Schema;
import io.swagger.v3.oas.annotations.tags.Tag;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import org.springframework.web.bind.annotation.GetMapping;
import org.springframework.web.bind.annotation.RequestMapping;
import org.springframework.web.bind.annotation.RestController;

@RestController
@AllowedFor({Caller.STATION, Caller.OPERATOR, Caller.ENGINEER, Caller.ADMINISTRATOR})
@RequestMapping("/api/products")
@Tag(
    name = "products",
    description = "Products, their tunings, and the versions of what they are judged by")
class ProductController {
  private final StoredProducts products;
  private final Clock clock;

  ProductController(StoredProducts products, Clock clock) {
    this.products = products;
    this.clock = clock;
  }

  /**
   * @param activeLimitSet the version that judges now; null if there is none
   * @param from the tuning that this one is derived from; null if it is derived from none
   * @param processing what the signal processor does to that one; null likewise
   */
  record TuningView(
      @Schema(example = "plain") String tuning,
      @Schema(example = "true") boolean required,
      @Schema(example = "3") Integer activeLimitSet,
      @Schema(example = "null") String from,
      ProcessingView processing) {}

  record ProductView(
      @Schema(example = "sedge-2") String product,
      @Schema(example = "Sedge 2") String name,
      @Schema(example = "Saltmarsh Works") String maker,
      @Schema(example = "SG2-\\d{6}") String serialPattern,
      @Schema(example = "IEC 60318-4") String earSimulator,
      List<TuningView> tunings) {}

  record ProductList(List<ProductView> items, @Schema(example = "null") String next) {}

  @GetMapping
  @Operation(summary = "Every product with its tunings and the limit set that judges each now")
  ProductList all() {
    Snapshot known = products.snapshot();
    return new ProductList(
        known.products().stream().map(product -> view(known, product)).toList(), null);
  }

  private ProductView view(Snapshot known, ProductDefinition product) {
    Instant now = clock.instant();
    return new ProductView(
        product.key(),
        product.name(),
        product.maker(),
        product.serialPattern(),
        product.earSimulator().label(),
        product.tunings().stream().map(tuning -> view(known, product.key(), tuning, now)).toList());
  }

  private static TuningView view(
      Snapshot known, String product, TuningDefinition tuning, Instant now) {
    Integer active =
        known
            .activeAt(product, tuning.key(), now)
            .flatMap(activation -> known.stored(activation.version()))
            .map(StoredLimitSet::set)
            .map(set -> set.version())
            .orElse(null);
    return new TuningView(
        tuning.key(),
        tuning.required(),
        active,
        tuning.from().orElse(null),
        tuning.processing().map(ProcessingView::of).orElse(null));
  }
}
