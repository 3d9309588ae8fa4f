package evenpair.stations;

import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.Products.Tuning;
import evenpair.web.Refusal;
import java.time.Instant;
import org.springframework.stereotype.Component;

/** The limits that a request about a product's tuning means. */
@Component
class LimitsLookup {
  private final Products products;

  LimitsLookup(Products products) {
    this.products = products;
  }

  /**
   * @throws Refusal 404 for a product or tuning that is not known
   */
  void requireTuning(String product, String tuning) {
    Product found =
        products
            .find(product)
            .orElseThrow(
                () ->
                    new Refusal(404, "unknown-product", "There is no product '" + product + "'.")
                        .with("field", "product")
                        .with("choices", products.all().stream().map(Product::key).toList()));
    if (found.tuning(tuning).isEmpty()) {
      throw new Refusal(
              404, "unknown-tuning", "Product '" + product + "' has no tuning '" + tuning + "'.")
          .with("field", "tuning")
          .with("choices", found.tunings().stream().map(Tuning::key).toList());
    }
  }

  /**
   * @return the set that is active at that instant
   * @throws Refusal 404 for a product or tuning that is not known, 409 if no set is active
   */
  StoredLimitSet activeAt(String product, String tuning, Instant at) {
    requireTuning(product, tuning);
    return products
        .activeAt(product, tuning, at)
        .orElseThrow(
            () ->
                new Refusal(
                    409,
                    "no-active-limit-set",
                    "No limit set of '"
                        + product
                        + "' in tuning '"
                        + tuning
                        + "' was active at "
                        + at
                        + ": it says which regions, drive and ear simulator count."));
  }
}
