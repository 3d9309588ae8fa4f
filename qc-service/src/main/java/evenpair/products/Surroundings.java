package evenpair.products;

import evenpair.acoustics.EarSimulator;
import java.util.Set;

/**
 * What a limit set must fit to, beyond being right by itself.
 *
 * @param product the product that it is for
 * @param tunings the tunings that it may be for
 * @param earSimulator the product's ear simulator
 * @param goldens names of golden responses that it may refer to
 */
record Surroundings(
    String product, Set<String> tunings, EarSimulator earSimulator, Set<String> goldens) {

  /** Notes each key that does not fit. */
  void check(YamlMap map) {
    map.optional("product").filter(v -> !v.is(product)).ifPresent(v -> v.refuse(product));
    map.optional("tuning")
        .filter(v -> tunings.stream().noneMatch(v::is))
        .ifPresent(v -> v.refuse(words(tunings)));
    map.optional("ear-simulator")
        .filter(v -> !v.is(earSimulator.label()))
        .ifPresent(v -> v.refuse(earSimulator.label() + ", the product's"));
    map.optional("golden")
        .filter(v -> goldens.stream().noneMatch(v::is))
        .ifPresent(
            v ->
                v.refuse(
                    goldens.isEmpty()
                        ? "a golden response that exists; there is none yet"
                        : words(goldens)));
  }

  private static String words(Set<String> words) {
    String list = String.join(", ", words.stream().sorted().toList());
    return words.size() == 1 ? list : "one of " + list;
  }
}
