package evenpair.products;

import evenpair.products.ProductDefinition.FilterDefinition;
import evenpair.products.ProductDefinition.TuningDefinition;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/** Reads {@code product.yaml}, noting every problem with its place before refusing. */
final class ProductReader {
  private static final int MOST_TUNINGS = 40;
  private static final int MOST_FILTERS = 40;
  private static final double LOWEST_RATE = 8000;
  private static final double HIGHEST_RATE = 768_000;
  private static final Map<String, String> KINDS =
      Map.of("low-shelf", "low-shelf", "high-shelf", "high-shelf", "peak", "peak");
  private static final Pattern ANY_LINE = Pattern.compile(".{1,200}");

  private ProductReader() {}

  /**
   * @param file name for the problems
   * @throws UnreadableLimits with every problem found
   */
  static ProductDefinition read(String file, byte[] bytes) throws UnreadableLimits {
    Problems problems = new Problems(file);
    Optional<YamlMap> root = YamlText.parse(bytes, problems).map();
    problems.throwIfAny();
    Optional<ProductDefinition> product = product(root.orElseThrow());
    problems.throwIfAny();
    return product.orElseThrow();
  }

  private static Optional<ProductDefinition> product(YamlMap map) {
    var key = map.required("product").flatMap(Keys::key);
    var name = map.required("name").flatMap(Keys::label);
    var maker = map.required("maker").flatMap(Keys::label);
    var serials = map.required("serial-pattern").flatMap(ProductReader::serialPattern);
    var simulator = map.required("ear-simulator").flatMap(v -> v.oneOf(Keys.EAR_SIMULATORS));
    var tunings = map.required("tunings").map(ProductReader::tunings).orElse(List.of());
    map.done();
    if (key.isEmpty()
        || name.isEmpty()
        || maker.isEmpty()
        || serials.isEmpty()
        || simulator.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(
        new ProductDefinition(
            key.get(), name.get(), maker.get(), serials.get(), simulator.get(), tunings));
  }

  private static Optional<String> serialPattern(YamlValue value) {
    Optional<String> pattern = value.text(ANY_LINE, "a regular expression of 1 to 200 characters");
    Optional<String> flaw = pattern.flatMap(SerialPatterns::flaw);
    flaw.ifPresent(value::refuse);
    return flaw.isPresent() ? Optional.empty() : pattern;
  }

  private static List<TuningDefinition> tunings(YamlValue value) {
    List<TuningDefinition> tunings = new ArrayList<>();
    Set<String> names = new HashSet<>();
    for (YamlValue element : value.list(1, MOST_TUNINGS)) {
      element.map().flatMap(map -> tuning(map, names)).ifPresent(tunings::add);
    }
    return tunings;
  }

  /**
   * @param before names already listed: a tuning derives from one of these, so that there is no
   *     circle
   */
  private static Optional<TuningDefinition> tuning(YamlMap map, Set<String> before) {
    var key = map.required("name").flatMap(Keys::key);
    var required = map.required("required").flatMap(YamlValue::truth);
    var from = map.optional("from").flatMap(Keys::key);
    var rate =
        map.optional("sample-rate-hz")
            .flatMap(v -> v.number(Range.from(LOWEST_RATE, HIGHEST_RATE)));
    double highest = rate.orElse(HIGHEST_RATE) / 2;
    var filters = map.optional("filters").map(v -> filters(v, highest)).orElse(List.of());
    var gain = map.optional("gain-db").flatMap(v -> v.number(Keys.DB));
    map.done();
    requireWhole(map);
    from.filter(f -> !before.contains(f)).ifPresent(f -> unlisted(map, f));
    if (key.isPresent() && !before.add(key.get())) {
      map.refuse(
          "name",
          Problems.quoted(key.get()) + " a second time",
          "a name of its own for each tuning");
    }
    return key.flatMap(
        k -> required.map(r -> new TuningDefinition(k, r, from, filters, gain, rate)));
  }

  private static void unlisted(YamlMap map, String from) {
    map.refuse("from", Problems.quoted(from), "a tuning that is listed before this one");
  }

  private static void requireWhole(YamlMap map) {
    if (map.has("filters") && !map.has("sample-rate-hz")) {
      map.refuse("filters", "filters without sample-rate-hz", "sample-rate-hz beside filters");
    }
    for (String key : List.of("filters", "gain-db", "sample-rate-hz")) {
      if (map.has(key) && !map.has("from")) {
        map.refuse(key, key + " without from", "from: the tuning that this one is derived from");
      }
    }
  }

  private static List<FilterDefinition> filters(YamlValue value, double highestHz) {
    List<FilterDefinition> filters = new ArrayList<>();
    for (YamlValue element : value.list(1, MOST_FILTERS)) {
      element.map().flatMap(map -> filter(map, highestHz)).ifPresent(filters::add);
    }
    return filters;
  }

  private static Optional<FilterDefinition> filter(YamlMap map, double highestHz) {
    var kind = map.required("kind").flatMap(v -> v.oneOf(KINDS));
    var hz = map.required("hz").flatMap(v -> v.number(Range.above(0, highestHz)));
    var gain = map.required("gain-db").flatMap(v -> v.number(Keys.DB));
    var q = map.required("q").flatMap(v -> v.number(Range.above(0, 100)));
    map.done();
    hz.filter(f -> f == highestHz)
        .ifPresent(
            f -> map.refuse("hz", Decimal.text(f), "a frequency below half of sample-rate-hz"));
    if (kind.isEmpty() || hz.isEmpty() || gain.isEmpty() || q.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new FilterDefinition(kind.get(), hz.get(), gain.get(), q.get()));
  }
}
