package evenpair.inspections;

import evenpair.products.GoldenResponses;
import evenpair.products.Products.StoredLimitSet;
import evenpair.web.Refusal;
import java.util.List;

/** The one golden response of each of the fixture's limit sets, as version 1. */
final class FixtureGoldens implements GoldenResponses {
  private final FixtureProducts products = new FixtureProducts();

  @Override
  public List<StoredGolden> of(String product, String tuning) {
    StoredLimitSet set =
        products
            .limitSet(product, tuning, 3)
            .orElseThrow(() -> new Refusal(404, "unknown-tuning", "no " + product + " " + tuning));
    return List.of(
        new StoredGolden(
            set.goldenId(), product, tuning, 1, set.set().golden(), set.golden(), true));
  }

  @Override
  public StoredGolden version(String product, String tuning, int version) {
    return of(product, tuning).stream()
        .filter(golden -> golden.version() == version)
        .findFirst()
        .orElseThrow(() -> new Refusal(404, "unknown-version", "no version " + version));
  }
}
