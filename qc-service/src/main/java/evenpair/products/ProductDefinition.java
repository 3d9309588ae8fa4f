package evenpair.products;

import evenpair.acoustics.EarSimulator;
import evenpair.products.Products.Product;
import evenpair.products.Products.Tuning;
import java.util.List;
import java.util.Optional;

/** A product as {@code product.yaml} defines it. */
record ProductDefinition(
    String key,
    String name,
    String maker,
    String serialPattern,
    EarSimulator earSimulator,
    List<TuningDefinition> tunings) {
  ProductDefinition {
    tunings = List.copyOf(tunings);
  }

  /**
   * @param required whether a unit needs a closed PASS in this tuning
   * @param from the tuning whose golden response it is derived from, if it is a DSP setting
   * @param filters what the DSP does to that one
   * @param gainDb overall gain, dB
   * @param sampleRateHz rate at which the DSP filters; present if there are filters
   */
  record TuningDefinition(
      String key,
      boolean required,
      Optional<String> from,
      List<FilterDefinition> filters,
      Optional<Double> gainDb,
      Optional<Double> sampleRateHz) {
    TuningDefinition {
      filters = List.copyOf(filters);
    }
  }

  /**
   * @param kind {@code low-shelf}, {@code high-shelf} or {@code peak}
   * @param hz corner or centre, below half the sample rate
   * @param q above 0
   */
  record FilterDefinition(String kind, double hz, double gainDb, double q) {}

  Product product() {
    List<Tuning> plain = tunings.stream().map(t -> new Tuning(t.key(), t.required())).toList();
    return new Product(key, name, maker, serialPattern, earSimulator, plain);
  }
}
