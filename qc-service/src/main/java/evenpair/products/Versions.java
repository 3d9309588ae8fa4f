package evenpair.products;

import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.web.Refusal;
import java.util.List;

/** Finds what a request names, or refuses with what there is. */
final class Versions {
  private Versions() {}

  /**
   * For something new: the tuning must be one that the product has now.
   *
   * @throws Refusal 404 if the product is unknown or does not list the tuning
   */
  static ProductDefinition listed(Snapshot known, String product, String tuning) {
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
   * For reading: a tuning that the product no longer lists keeps its versions.
   *
   * @throws Refusal 404 if the product or its tuning is unknown
   */
  static void known(Snapshot known, String product, String tuning) {
    if (known.limitSets(product, tuning).isEmpty() && known.goldens(product, tuning).isEmpty()) {
      listed(known, product, tuning);
    }
  }

  /**
   * @throws Refusal 404 if the product, its tuning or the version is unknown
   */
  static Limits limitSet(Snapshot known, String product, String tuning, int version) {
    known(known, product, tuning);
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
    known(known, product, tuning);
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
