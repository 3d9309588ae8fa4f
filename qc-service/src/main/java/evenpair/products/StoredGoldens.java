package evenpair.products;

import evenpair.products.VersionRows.Golden;
import java.util.List;
import org.springframework.stereotype.Component;

/** Golden responses for other modules, from the same snapshot as limit sets. */
@Component
class StoredGoldens implements GoldenResponses {
  private final StoredProducts products;

  StoredGoldens(StoredProducts products) {
    this.products = products;
  }

  @Override
  public List<StoredGolden> of(String product, String tuning) {
    Snapshot known = products.snapshot();
    Versions.known(known, product, tuning);
    return known.goldens(product, tuning).stream().map(StoredGoldens::stored).toList();
  }

  @Override
  public StoredGolden version(String product, String tuning, int version) {
    return stored(Versions.golden(products.snapshot(), product, tuning, version));
  }

  private static StoredGolden stored(Golden row) {
    return new StoredGolden(
        row.id(),
        row.product(),
        row.tuning(),
        row.version(),
        row.name(),
        row.response(),
        row.signOff() != null);
  }
}
