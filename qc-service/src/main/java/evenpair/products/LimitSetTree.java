package evenpair.products;

import evenpair.acoustics.Band;
import evenpair.acoustics.TuningFilters;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.LimitSet.DecisionRule;
import evenpair.tolerance.LimitSet.DistortionLimit;
import evenpair.tolerance.LimitSet.PolarityRule;
import evenpair.tolerance.LimitSet.SeatingRules;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * A limit set as the tree of maps, lists, words and numbers that YAML and JSON both write; defaults
 * written out.
 */
final class LimitSetTree {
  private LimitSetTree() {}

  static Map<String, Object> of(LimitSet set) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("product", set.product());
    tree.put("tuning", set.tuning());
    tree.put("version", set.version());
    tree.put("ear-simulator", set.earSimulator().label());
    tree.put("golden", set.golden());
    tree.put("drive", drive(set.drive()));
    tree.put("smoothing", set.smoothing().label());
    tree.put("level", level(set.level()));
    tree.put("regions", set.regions().stream().map(LimitSetTree::region).toList());
    if (!set.distortion().isEmpty()) {
      tree.put("distortion", set.distortion().stream().map(LimitSetTree::distortion).toList());
    }
    if (set.polaritySame()) {
      tree.put("polarity", polarity(set.polarity()));
    }
    set.idleNoiseDba().ifPresent(dba -> tree.put("idle-noise-dba", dba));
    tree.put("signal-to-noise-db", set.signalToNoiseDb());
    tree.put("seating", seating(set.seating()));
    tree.put("verification-db", set.verificationDb());
    tree.put("decision", decision(set.decision()));
    return tree;
  }

  private static Map<String, Object> drive(Drive drive) {
    if (drive instanceof Drive.Voltage voltage) {
      return Map.of("mv-rms", voltage.millivoltsRms());
    }
    return Map.of("dbfs", ((Drive.Digital) drive).dbfs());
  }

  private static Map<String, Object> level(LimitSet.LevelLimit level) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("band-hz", band(level.band()));
    tree.put("tolerance-db", List.of(level.lowest(), level.highest()));
    tree.put("balance-db", level.balanceDb());
    return tree;
  }

  private static Map<String, Object> region(Region region) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", region.name());
    tree.put("hz", band(region.band()));
    tree.put("window-db", window(region.lower(), region.upper()));
    region.match().ifPresent(match -> tree.put("match-db", match(match)));
    if (!region.required()) {
      tree.put("required", false);
    }
    return tree;
  }

  private static List<Object> window(Span lower, Span upper) {
    boolean constant = lower.start() == lower.end() && upper.start() == upper.end();
    return constant
        ? List.of(lower.start(), upper.start())
        : List.of(List.of(lower.start(), upper.start()), List.of(lower.end(), upper.end()));
  }

  private static Object match(Span match) {
    return match.start() == match.end()
        ? (Object) match.start()
        : List.of(match.start(), match.end());
  }

  private static Map<String, Object> distortion(DistortionLimit limit) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("hz", band(limit.band()));
    limit
        .orders()
        .ifPresent(orders -> tree.put("orders", List.of(orders.lowest(), orders.highest())));
    limit.thdPercent().ifPresent(percent -> tree.put("thd-percent", percent));
    limit.highOrderDb().ifPresent(db -> tree.put("high-order-db", db));
    return tree;
  }

  private static Object polarity(PolarityRule rule) {
    if (rule.equals(PolarityRule.SAME)) {
      return "same";
    }
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("same", true);
    tree.put("required", rule.required());
    if (!rule.bands().isEmpty()) {
      tree.put("bands-hz", rule.bands().stream().map(LimitSetTree::band).toList());
    }
    return tree;
  }

  private static Map<String, Object> seating(SeatingRules seating) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("count", seating.count());
    tree.put("tries", seating.tries());
    tree.put("leak-db", seating.leakDb());
    tree.put("depth-percent", seating.depthPercent());
    tree.put("depth-search-hz", band(seating.depthSearch()));
    return tree;
  }

  private static Map<String, Object> decision(DecisionRule decision) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("rule", decision.guarded() ? "guarded" : "simple");
    if (decision.guarded()) {
      tree.put("guard", decision.guard());
      tree.put("conditional-pass", decision.acceptConditionalPass() ? "accept" : "refuse");
    }
    return tree;
  }

  private static List<Object> band(Band band) {
    return List.of(band.fromHz(), band.toHz());
  }

  /**
   * @return as {@link #of}, for a product
   */
  static Map<String, Object> of(ProductDefinition product) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("product", product.key());
    tree.put("name", product.name());
    tree.put("maker", product.maker());
    tree.put("serial-pattern", product.serialPattern());
    tree.put("ear-simulator", product.earSimulator().label());
    tree.put("tunings", product.tunings().stream().map(LimitSetTree::tuning).toList());
    return tree;
  }

  private static Map<String, Object> tuning(ProductDefinition.TuningDefinition tuning) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("name", tuning.key());
    tree.put("required", tuning.required());
    tuning.from().ifPresent(from -> tree.put("from", from));
    Optional.of(tuning.filters())
        .filter(filters -> !filters.isEmpty())
        .ifPresent(
            filters -> tree.put("filters", filters.stream().map(LimitSetTree::filter).toList()));
    tuning.gainDb().ifPresent(gain -> tree.put("gain-db", gain));
    tuning.sampleRateHz().ifPresent(rate -> tree.put("sample-rate-hz", rate));
    return tree;
  }

  private static Map<String, Object> filter(TuningFilters.Filter filter) {
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("kind", filter.kind().word());
    tree.put("hz", filter.hz());
    tree.put("gain-db", filter.gainDb());
    tree.put("q", filter.q());
    return tree;
  }
}
