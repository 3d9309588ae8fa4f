package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Span;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/** Forms of value that several keys share. */
final class Keys {
  static final Map<String, EarSimulator> EAR_SIMULATORS =
      named(EarSimulator.values(), EarSimulator::label);
  static final Map<String, Smoothing> SMOOTHINGS = named(Smoothing.values(), Smoothing::label);

  /** The largest limit that means anything, dB: a window or match limit above it judges nothing. */
  static final double LARGEST_LIMIT = 40;

  static final Range DB = Range.from(-LARGEST_LIMIT, LARGEST_LIMIT);
  static final Range DB_ABOVE_0 = Range.above(0, LARGEST_LIMIT);

  private static final Range AUDIBLE = Range.from(20, 20_000);
  private static final Pattern KEY = Pattern.compile("[a-z0-9][a-z0-9-]{0,31}");
  private static final Pattern LABEL = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N} .,&'_-]{0,63}");

  private Keys() {}

  private static <T> Map<String, T> named(T[] values, Function<T, String> label) {
    Map<String, T> named = new LinkedHashMap<>();
    Arrays.stream(values).forEach(value -> named.put(label.apply(value), value));
    return named;
  }

  /** A product's or a tuning's key. */
  static Optional<String> key(YamlValue value) {
    return value.text(KEY, "1 to 32 of a–z, 0–9 and -, such as sedge-2");
  }

  /** A name for people to read. */
  static Optional<String> label(YamlValue value) {
    return value.text(LABEL, "1 to 64 letters, digits, spaces and . , & ' _ -");
  }

  /** {@code [from, to]} in hertz, 20 to 20 000, rising, with at least one grid point inside. */
  static Optional<Band> band(YamlValue value) {
    return pair(value, AUDIBLE).flatMap(ends -> band(value, ends));
  }

  private static Optional<Band> band(YamlValue value, Span ends) {
    if (!(ends.start() < ends.end())) {
      value.refuse("[from, to] in Hz with from below to");
      return Optional.empty();
    }
    Band band = new Band(ends.start(), ends.end());
    if (band.points() == 0) {
      value.refuse("a span that holds a point of the 1/24-octave grid");
      return Optional.empty();
    }
    return Optional.of(band);
  }

  /** {@code [lower, upper]} in dB, lower below upper. */
  static Optional<Span> window(YamlValue value) {
    Optional<Span> window = pair(value, DB);
    if (window.filter(w -> !(w.start() < w.end())).isPresent()) {
      value.refuse("[lower, upper] in dB with lower below upper");
      return Optional.empty();
    }
    return window;
  }

  /** Two numbers of the range. */
  static Optional<Span> pair(YamlValue value, Range range) {
    List<YamlValue> ends = value.list(2, 2);
    if (ends.isEmpty()) {
      return Optional.empty();
    }
    Optional<Double> start = ends.get(0).number(range);
    Optional<Double> end = ends.get(1).number(range);
    return start.flatMap(s -> end.map(e -> new Span(s, e)));
  }
}
