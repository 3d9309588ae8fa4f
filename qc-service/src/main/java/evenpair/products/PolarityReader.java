package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.tolerance.LimitSet.PolarityRule;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Reads {@code polarity}: the word {@code same}, or the same with more said in a mapping. */
final class PolarityReader {
  private static final int MOST_BANDS = 10;

  /** A correlation over fewer points of the grid tells nothing. */
  private static final int FEWEST_POINTS = 3;

  private PolarityReader() {}

  static Optional<PolarityRule> read(YamlValue value) {
    return value.isMap()
        ? value.map().flatMap(PolarityReader::block)
        : value.oneOf(Map.of("same", PolarityRule.SAME));
  }

  private static Optional<PolarityRule> block(YamlMap map) {
    Optional<Boolean> same = map.required("same").flatMap(v -> v.oneOf(Map.of("true", true)));
    boolean required = map.optional("required").flatMap(YamlValue::truth).orElse(true);
    List<Band> bands = map.optional("bands-hz").map(PolarityReader::bands).orElse(List.of());
    map.done();
    return same.map(s -> new PolarityRule(true, required, bands));
  }

  private static List<Band> bands(YamlValue value) {
    List<Band> bands = new ArrayList<>();
    for (YamlValue element : value.list(1, MOST_BANDS)) {
      Optional<Band> band = Keys.band(element);
      band.filter(b -> b.points() < FEWEST_POINTS)
          .ifPresent(b -> element.refuse("a span that holds three points of the grid at least"));
      band.ifPresent(bands::add);
    }
    return bands;
  }
}
