package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** Reads the regions of a limit set: rising, named once each, every limit the right way round. */
final class RegionReader {
  private static final int MOST = 40;

  private RegionReader() {}

  /**
   * @return the regions; empty, with problems noted, if one of them could not be read
   */
  static Optional<List<Region>> read(YamlValue value) {
    List<Region> regions = new ArrayList<>();
    Set<String> names = new HashSet<>();
    List<YamlValue> elements = value.list(1, MOST);
    for (YamlValue element : elements) {
      Optional<YamlMap> map = element.map();
      Optional<Region> region = map.flatMap(RegionReader::region);
      if (region.isPresent()) {
        check(map.get(), region.get(), regions, names);
        regions.add(region.get());
      }
    }
    return regions.isEmpty() || regions.size() < elements.size()
        ? Optional.empty()
        : Optional.of(regions);
  }

  private static void check(YamlMap map, Region region, List<Region> before, Set<String> names) {
    if (!names.add(region.name())) {
      map.refuse(
          "name",
          Problems.quoted(region.name()) + " a second time",
          "a name of its own for each region");
    }
    if (!before.isEmpty() && region.band().fromHz() < before.get(before.size() - 1).band().toHz()) {
      String end = Decimal.text(before.get(before.size() - 1).band().toHz());
      map.refuse(
          "hz",
          "a start at " + Decimal.text(region.band().fromHz()) + " Hz",
          "a start not below " + end + " Hz, where the region before ends");
    }
  }

  private static Optional<Region> region(YamlMap map) {
    var name = map.required("name").flatMap(Keys::label);
    var band = map.required("hz").flatMap(Keys::band);
    var window = map.required("window-db").flatMap(RegionReader::window);
    Optional<Optional<Span>> match = map.optional("match-db").map(RegionReader::match);
    boolean required = map.optional("required").flatMap(YamlValue::truth).orElse(true);
    map.done();
    if (name.isEmpty() || band.isEmpty() || window.isEmpty()) {
      return Optional.empty();
    }
    Window limits = window.get();
    return Optional.of(
        new Region(
            name.get(),
            band.get(),
            limits.lower(),
            limits.upper(),
            match.flatMap(m -> m),
            required));
  }

  private record Window(Span lower, Span upper) {}

  /**
   * {@code [lower, upper]} or {@code [[lower, upper], [lower, upper]]} at the region's start and
   * end.
   */
  private static Optional<Window> window(YamlValue value) {
    List<YamlValue> ends = value.list(2, 2);
    if (ends.isEmpty() || !ends.get(0).isList()) {
      return ends.isEmpty()
          ? Optional.empty()
          : Keys.window(value)
              .map(w -> new Window(Span.constant(w.start()), Span.constant(w.end())));
    }
    Optional<Span> start = Keys.window(ends.get(0));
    Optional<Span> end = Keys.window(ends.get(1));
    return start.flatMap(
        s -> end.map(e -> new Window(new Span(s.start(), e.start()), new Span(s.end(), e.end()))));
  }

  /** A number, or {@code [start, end]}. */
  private static Optional<Span> match(YamlValue value) {
    return value.isList()
        ? Keys.pair(value, Keys.DB_ABOVE_0)
        : value.number(Keys.DB_ABOVE_0).map(Span::constant);
  }

  /**
   * An alignment taken where no window judges would let a defect there shift everything else
   * unseen.
   */
  static void requireCover(YamlMap set, Band alignment, List<Region> regions) {
    IntStream.rangeClosed(alignment.firstIndex(), alignment.lastIndex())
        .filter(i -> regions.stream().noneMatch(region -> region.band().holds(i)))
        .findFirst()
        .ifPresent(i -> uncovered(set, Grid.label(i)));
  }

  private static void uncovered(YamlMap set, double hz) {
    set.refuse(
        "regions",
        "no region at " + Decimal.text(hz) + " Hz",
        "regions that cover the whole of level.band-hz");
  }
}
