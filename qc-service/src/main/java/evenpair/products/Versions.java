package evenpair.products;

import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.web.Refusal;
import java.util.List;

/** Finds what a request names, or refuses with what there is. */
final class Versions {
  private Versions() {}

  /**
   * @throws Refusal 404 if the product or its tuning is unknown
   */
  static ProductDefinition product(Snapshot known, String product, String tuning) {
    ProductDefinition definition =
        known
            .product(product)
            .orElseThrow(
                () ->
                    unknown(
                        "product",
                        "There is no product \"" + product + "\".",
                        known.products().stream().map(ProductDefinition::key).toList()));
    List<String> tunings =
        definition.tunings().stream().map(ProductDefinition.TuningDefinition::key).toList();
    if (!tunings.contains(tuning)) {
      throw unknown("tuning", product + " has no tuning \"" + tuning + "\".", tunings);
    }
    return definition;
  }

  /**
   * @throws Refusal 404 if the product, its tuning or the version is unknown
   */
  static Limits limitSet(Snapshot known, String product, String tuning, int version) {
    product(known, product, tuning);
    List<Integer> versions =
        known.limitSets(product, tuning).stream().map(Limits::version).toList();
    return known
        .limitSet(product, tuning, version)
        .orElseThrow(
            () ->
                unknown(
                    "version",
                    product + " " + tuning + " has no limit set of version " + version + ".",
                    versions));
  }

  /**
   * @throws Refusal 404 if the product, its tuning or the version is unknown
   */
  static Golden golden(Snapshot known, String product, String tuning, int version) {
    product(known, product, tuning);
    List<Golden> goldens = known.goldens(product, tuning);
    List<Integer> versions = goldens.stream().map(Golden::version).toList();
    return goldens.stream()
        .filter(golden -> golden.version() == version)
        .findFirst()
        .orElseThrow(
            () ->
                unknown(
                    "version",
                    product + " " + tuning + " has no golden response of version " + version + ".",
                    versions));
  }

  private static Refusal unknown(String what, String detail, List<?> choices) {
    return new Refusal(404, "unknown-" + what, detail).with("field", what).with("choices", choices);
  }
}
