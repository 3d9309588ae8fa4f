package evenpair.products;

import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.TuningFilters;
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
      List<TuningFilters.Filter> filters,
      Optional<Double> gainDb,
      Optional<Double> sampleRateHz) {
    TuningDefinition {
      filters = List.copyOf(filters);
    }

    /**
     * @return what is done to the tuning that this one is derived from; empty if there is none
     */
    Optional<TuningFilters> processing() {
      // without filters the rate says nothing: a gain is the same at any
      double rateHz = sampleRateHz.orElse(TuningFilters.LOWEST_RATE_HZ);
      return from.map(f -> new TuningFilters(filters, gainDb.orElse(0.0), rateHz));
    }

    private Tuning tuning() {
      return new Tuning(key, required, from, processing());
    }
  }

  Optional<TuningDefinition> tuning(String key) {
    return tunings.stream().filter(tuning -> tuning.key().equals(key)).findFirst();
  }

  Product product() {
    List<Tuning> shown = tunings.stream().map(TuningDefinition::tuning).toList();
    return new Product(key, name, maker, serialPattern, earSimulator, shown);
  }
}
