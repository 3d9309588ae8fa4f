package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * What changed from one limit set to another, as keys of sentences and their values: limits in
 * words of their own, everything else as it is written in the YAML. Version and name of the golden
 * response are no difference.
 */
final class LimitDifference {
  /** Told by themselves, or not a difference. */
  private static final List<String> APART = List.of("version", "golden", "level", "regions");

  private final List<Change> changes = new ArrayList<>();

  /**
   * @param key of the table of texts, below {@code difference.}
   */
  record Change(String key, Map<String, Object> values) {}

  private LimitDifference() {}

  static List<Change> between(LimitSet from, LimitSet to) {
    LimitDifference difference = new LimitDifference();
    difference.level(from.level(), to.level());
    difference.regions(from.regions(), to.regions());
    difference.rest(LimitSetTree.of(from), LimitSetTree.of(to));
    return List.copyOf(difference.changes);
  }

  private void level(LimitSet.LevelLimit from, LimitSet.LevelLimit to) {
    Span before = new Span(from.lowest(), from.highest());
    Span after = new Span(to.lowest(), to.highest());
    if (!before.equals(after)) {
      String how = how(before.start(), before.end(), after.start(), after.end());
      add("level." + how, "from", window(before), "to", window(after));
    }
    if (from.balanceDb() != to.balanceDb()) {
      add(
          "balance." + (to.balanceDb() < from.balanceDb() ? "lowered" : "raised"),
          "from",
          db(from.balanceDb()),
          "to",
          db(to.balanceDb()));
    }
    if (!from.band().equals(to.band())) {
      add("alignment", "from", hertz(from.band()), "to", hertz(to.band()));
    }
  }

  private void regions(List<Region> from, List<Region> to) {
    for (Region before : from) {
      Optional<Region> after = named(before.name(), to);
      if (after.isEmpty()) {
        add("region.removed", "region", before.name(), "span", hertz(before.band()));
      } else {
        region(before, after.get());
      }
    }
    to.stream()
        .filter(region -> named(region.name(), from).isEmpty())
        .forEach(
            region ->
                add(
                    "region.added",
                    "region",
                    region.name(),
                    "span",
                    hertz(region.band()),
                    "window",
                    window(region),
                    "match",
                    region.match().map(LimitDifference::match).orElse("–")));
  }

  private static Optional<Region> named(String name, List<Region> regions) {
    return regions.stream().filter(region -> region.name().equals(name)).findFirst();
  }

  private void region(Region from, Region to) {
    String name = from.name();
    String span = hertz(to.band());
    if (!from.band().equals(to.band())) {
      add("region.moved", "region", name, "from", hertz(from.band()), "to", span);
    }
    if (!from.lower().equals(to.lower()) || !from.upper().equals(to.upper())) {
      String how = how(from, to);
      add("window." + how, "region", name, "from", window(from), "to", window(to), "span", span);
    }
    if (!from.match().equals(to.match())) {
      match(name, from.match(), to.match(), span);
    }
    if (from.required() != to.required()) {
      add(to.required() ? "region.required" : "region.optional", "region", name);
    }
  }

  private void match(String region, Optional<Span> from, Optional<Span> to, String span) {
    if (from.isEmpty()) {
      add("match.added", "region", region, "to", match(to.orElseThrow()), "span", span);
    } else if (to.isEmpty()) {
      add("match.removed", "region", region, "from", match(from.get()), "span", span);
    } else {
      boolean lower = atMost(to.get(), from.get());
      boolean higher = atMost(from.get(), to.get());
      String how = lower ? "lowered" : higher ? "raised" : "changed";
      add(
          "match." + how,
          "region",
          region,
          "from",
          match(from.get()),
          "to",
          match(to.get()),
          "span",
          span);
    }
  }

  private static String how(Region from, Region to) {
    boolean narrower = atMost(to.upper(), from.upper()) && atMost(from.lower(), to.lower());
    boolean wider = atMost(from.upper(), to.upper()) && atMost(to.lower(), from.lower());
    return narrower ? "narrowed" : wider ? "widened" : "changed";
  }

  private static String how(double lower, double upper, double newLower, double newUpper) {
    boolean narrower = newLower >= lower && newUpper <= upper;
    boolean wider = newLower <= lower && newUpper >= upper;
    return narrower ? "narrowed" : wider ? "widened" : "changed";
  }

  private static boolean atMost(Span a, Span b) {
    return a.start() <= b.start() && a.end() <= b.end();
  }

  private void rest(Map<String, Object> from, Map<String, Object> to) {
    Map<String, Object> keys = new LinkedHashMap<>(from);
    keys.putAll(to);
    for (String key : keys.keySet()) {
      if (!APART.contains(key) && !Objects.equals(from.get(key), to.get(key))) {
        add("other", "key", key, "from", written(from.get(key)), "to", written(to.get(key)));
      }
    }
  }

  private static String written(Object value) {
    return value == null ? "–" : YamlWriter.flow(value);
  }

  private void add(String key, String... values) {
    Map<String, Object> named = new LinkedHashMap<>();
    for (int i = 0; i < values.length; i += 2) {
      named.put(values[i], values[i + 1]);
    }
    changes.add(new Change(key, named));
  }

  private static String window(Region region) {
    String start = window(new Span(region.lower().start(), region.upper().start()));
    String end = window(new Span(region.lower().end(), region.upper().end()));
    return start.equals(end) ? start : start + " … " + end;
  }

  /** {@code ±1.5 dB}, or {@code −1.5/+2 dB}. */
  private static String window(Span window) {
    return window.start() == -window.end()
        ? "±" + Decimal.text(window.end()) + " dB"
        : signed(window.start()) + "/" + signed(window.end()) + " dB";
  }

  private static String signed(double value) {
    String text = Decimal.text(Math.abs(value));
    return value == 0 ? text : (value < 0 ? "−" : "+") + text;
  }

  private static String match(Span match) {
    return match.start() == match.end()
        ? db(match.start())
        : db(match.start()) + " … " + db(match.end());
  }

  private static String db(double value) {
    return Decimal.text(value) + " dB";
  }

  /** {@code 200 Hz–6 kHz}. */
  private static String hertz(Band band) {
    return hertz(band.fromHz()) + "–" + hertz(band.toHz());
  }

  private static String hertz(double hz) {
    return hz < 1000 ? Decimal.text(hz) + " Hz" : Decimal.text(hz / 1000) + " kHz";
  }
}
