package evenpair.demo.line;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Smoothing;
import evenpair.demo.earpiece.Design;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.yaml.snakeyaml.LoaderOptions;
import org.yaml.snakeyaml.Yaml;
import org.yaml.snakeyaml.constructor.SafeConstructor;

/**
 * The seating rules and the alignment band of a product's plain tuning as its limit set in limits/
 * states them. The service checks that file; this reads no more than a look at a seating needs.
 */
public final class PlainLimits {
  private PlainLimits() {}

  /**
   * @return the golden response of the design's plain tuning
   */
  public static GoldenResponse golden(Design design) {
    Golden golden = Golden.of(design, Cable.plain("plain", true));
    return new GoldenResponse(Curve.of(golden.levelDb()), Optional.of(golden.phaseDeg()));
  }

  /**
   * @return a set with that tuning's alignment band and seating rules; everything else is neutral
   */
  public static LimitSet seating(Design design) {
    String place = "/limits/" + design.product() + "/plain.yaml";
    try (InputStream file = PlainLimits.class.getResourceAsStream(place)) {
      if (file == null) {
        throw new IllegalStateException("no " + place + " among the packed limits");
      }
      Map<String, Object> root = new Yaml(new SafeConstructor(new LoaderOptions())).load(file);
      return set(design, band(map(root, "level"), "band-hz"), map(root, "seating"));
    } catch (IOException e) {
      throw new IllegalStateException("cannot read " + place, e);
    }
  }

  private static LimitSet set(Design design, Band alignment, Map<String, Object> seating) {
    Span wide = new Span(40, 40);
    Region all =
        new Region("all", new Band(20, 20_000), new Span(-40, -40), wide, Optional.empty(), false);
    return new LimitSet(
        design.product(),
        "plain",
        1,
        design.earSimulator(),
        "plain-golden.csv",
        new Drive.Voltage(design.millivoltsRms()),
        Smoothing.TWELFTH_OCTAVE,
        new LimitSet.LevelLimit(alignment, -40, 40, 40),
        List.of(all),
        List.of(),
        false,
        OptionalDouble.empty(),
        6,
        new LimitSet.SeatingRules(
            (Integer) seating.get("count"),
            (Integer) seating.get("tries"),
            number(seating, "leak-db"),
            number(seating, "depth-percent"),
            band(seating, "depth-search-hz")),
        40,
        new LimitSet.DecisionRule(false, 0, false));
  }

  private static double number(Map<String, Object> map, String key) {
    return ((Number) map.get(key)).doubleValue();
  }

  @SuppressWarnings("unchecked")
  private static Map<String, Object> map(Map<String, Object> root, String key) {
    return (Map<String, Object>) root.get(key);
  }

  @SuppressWarnings("unchecked")
  private static Band band(Map<String, Object> map, String key) {
    List<Number> ends = (List<Number>) map.get(key);
    return new Band(ends.get(0).doubleValue(), ends.get(1).doubleValue());
  }
}
