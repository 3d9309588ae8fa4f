package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.TuningFilters;
import evenpair.acoustics.TuningFilters.Filter;
import evenpair.acoustics.TuningFilters.Kind;
import evenpair.products.ProductDefinition.TuningDefinition;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Reads {@code product.yaml}, noting every problem with its place before refusing. */
final class ProductReader {
  private static final int MOST_TUNINGS = 40;
  private static final int MOST_FILTERS = 40;
  private static final double HIGHEST_RATE = 768_000;

  /** A narrower or wider filter than these is a slip: no processor has one (common practice). */
  private static final Range Q = Range.from(0.01, 100);

  private static final double LOWEST_FILTER_HZ = 1;
  private static final Map<String, Kind> KINDS =
      Arrays.stream(Kind.values()).collect(Collectors.toMap(Kind::word, kind -> kind));
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
            .flatMap(v -> v.number(Range.from(TuningFilters.LOWEST_RATE_HZ, HIGHEST_RATE)));
    double highest = rate.orElse(HIGHEST_RATE) / 2;
    var filters =
        map.optional("filters").map(v -> filters(v, highest)).orElse(Optional.of(List.of()));
    var gain = map.optional("gain-db").flatMap(v -> v.number(Keys.DB));
    map.done();
    requireWhole(map);
    from.filter(f -> !before.contains(f)).ifPresent(f -> unlisted(map, f, before));
    filters.ifPresent(
        list ->
            rate.ifPresent(
                r -> requireBoundedGain(map, new TuningFilters(list, gain.orElse(0.0), r))));
    if (key.isPresent() && !before.add(key.get())) {
      map.refuse(
          "name",
          Problems.quoted(key.get()) + " a second time",
          "a name of its own for each tuning");
    }
    return key.flatMap(
        k ->
            required.flatMap(
                r -> filters.map(f -> new TuningDefinition(k, r, from, f, gain, rate))));
  }

  private static void unlisted(YamlMap map, String from, Set<String> before) {
    String listed = before.isEmpty() ? "there is none" : String.join(", ", before);
    map.refuse(
        "from", Problems.quoted(from), "a tuning that is listed before this one (" + listed + ")");
  }

  /** Each gain may be in its range and their sum be no setting that anybody sells. */
  private static void requireBoundedGain(YamlMap map, TuningFilters processing) {
    Curve gains = processing.gains();
    int largest = 0;
    for (int i = 1; i < Grid.POINTS; i++) {
      largest = Math.abs(gains.at(i)) > Math.abs(gains.at(largest)) ? i : largest;
    }
    if (Math.abs(gains.at(largest)) > Keys.LARGEST_LIMIT) {
      map.refuse(
          "filters",
          String.format(
              Locale.ROOT,
              "%+.1f dB at %s Hz, all filters and gain-db together",
              gains.at(largest),
              Decimal.text(Grid.label(largest))),
          "a gain from -"
              + Decimal.text(Keys.LARGEST_LIMIT)
              + " to "
              + Decimal.text(Keys.LARGEST_LIMIT)
              + " dB everywhere from 20 Hz to 20 kHz");
    }
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

  /**
   * @return empty if one of them is wrong
   */
  private static Optional<List<Filter>> filters(YamlValue value, double highestHz) {
    List<Filter> filters = new ArrayList<>();
    List<YamlValue> elements = value.list(1, MOST_FILTERS);
    for (YamlValue element : elements) {
      element.map().flatMap(map -> filter(map, highestHz)).ifPresent(filters::add);
    }
    boolean whole = !elements.isEmpty() && filters.size() == elements.size();
    return whole ? Optional.of(filters) : Optional.empty();
  }

  private static Optional<Filter> filter(YamlMap map, double highestHz) {
    var kind = map.required("kind").flatMap(v -> v.oneOf(KINDS));
    var hz = map.required("hz").flatMap(v -> v.number(Range.from(LOWEST_FILTER_HZ, highestHz)));
    var gain = map.required("gain-db").flatMap(v -> v.number(Keys.DB));
    var q = map.required("q").flatMap(v -> v.number(Q));
    map.done();
    hz.filter(f -> f == highestHz)
        .ifPresent(
            f -> map.refuse("hz", Decimal.text(f), "a frequency below half of sample-rate-hz"));
    if (kind.isEmpty()
        || hz.filter(f -> f < highestHz).isEmpty()
        || gain.isEmpty()
        || q.isEmpty()) {
      return Optional.empty();
    }
    return Optional.of(new Filter(kind.get(), hz.get(), gain.get(), q.get()));
  }
}
