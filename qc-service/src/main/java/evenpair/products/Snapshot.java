package evenpair.products;

import evenpair.products.Products.StoredLimitSet;
import evenpair.products.VersionRows.Activation;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.tolerance.Judges;
import evenpair.tolerance.LimitSet;
import java.time.Instant;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Everything that the tables hold, as it was at one change number; immutable. */
final class Snapshot {
  private final long number;
  private final Map<String, ProductDefinition> products = new LinkedHashMap<>();
  private final Map<UUID, Golden> goldens = new LinkedHashMap<>();
  private final Map<UUID, Limits> rows = new LinkedHashMap<>();
  private final Map<UUID, StoredLimitSet> stored = new LinkedHashMap<>();
  private final List<Activation> activations;

  private Snapshot(long number, VersionStore store) {
    this.number = number;
    store.products().forEach(product -> products.put(product.key(), product));
    store.limitSets().forEach(row -> rows.put(row.id(), row));
    store.goldens().forEach(golden -> goldens.put(golden.id(), golden));
    this.activations = store.activations();
    rows.values().forEach(row -> stored.put(row.id(), stored(row)));
  }

  /**
   * Reads the number first: what changes while the rest is read is read again at the next
   * comparison. A limit set is read before its golden response can be missed, since goldens are
   * added first.
   */
  static Snapshot of(VersionStore store) {
    return new Snapshot(store.changeNumber(), store);
  }

  private StoredLimitSet stored(Limits row) {
    try {
      LimitSet set =
          LimitSetReader.read("limit set " + row.id(), Canonical.bytes(row.definition()));
      Golden golden = goldens.get(row.goldenId());
      return new StoredLimitSet(
          row.id(),
          set,
          golden.id(),
          golden.response(),
          row.digest(),
          Judges.forLimits(set, golden.response()));
    } catch (UnreadableLimits e) {
      throw new IllegalStateException("a stored limit set cannot be read", e);
    }
  }

  long number() {
    return number;
  }

  List<ProductDefinition> products() {
    return List.copyOf(products.values());
  }

  Optional<ProductDefinition> product(String key) {
    return Optional.ofNullable(products.get(key));
  }

  /**
   * @return the limit set's row, if it exists
   */
  Optional<Limits> row(UUID limitSet) {
    return Optional.ofNullable(rows.get(limitSet));
  }

  /**
   * @return versions of the tuning, drafts included, rising
   */
  List<Limits> limitSets(String product, String tuning) {
    return rows.values().stream()
        .filter(r -> r.product().equals(product) && r.tuning().equals(tuning))
        .toList();
  }

  Optional<Limits> limitSet(String product, String tuning, int version) {
    return limitSets(product, tuning).stream().filter(row -> row.version() == version).findFirst();
  }

  /**
   * @return versions of the tuning, drafts included, rising
   */
  List<Golden> goldens(String product, String tuning) {
    return goldens.values().stream()
        .filter(g -> g.product().equals(product) && g.tuning().equals(tuning))
        .toList();
  }

  Golden golden(UUID id) {
    return goldens.get(id);
  }

  Optional<StoredLimitSet> stored(UUID id) {
    return Optional.ofNullable(stored.get(id));
  }

  /**
   * @return the activation that holds at that instant: the latest one up to it, the one set last of
   *     equal ones
   */
  Optional<Activation> activeAt(String product, String tuning, Instant at) {
    return activations.stream()
        .filter(activation -> !activation.from().isAfter(at))
        .filter(activation -> isOf(rows.get(activation.version()), product, tuning))
        .max(Comparator.comparing(Activation::from).thenComparing(Activation::setAt));
  }

  /**
   * @return the golden response that a new set of the tuning means by a name: the active one, else
   *     the newest of that name
   */
  Optional<Golden> golden(String product, String tuning, String name, Instant at) {
    List<Golden> named =
        goldens(product, tuning).stream().filter(golden -> golden.name().equals(name)).toList();
    return latest(named, at).or(() -> named.stream().reduce((older, newer) -> newer));
  }

  /**
   * @return the golden response that the tuning has at that instant: the one activated last up to
   *     it, else the one that the active limit set refers to
   */
  Optional<Golden> activeGolden(String product, String tuning, Instant at) {
    return latest(goldens(product, tuning), at)
        .or(
            () ->
                activeAt(product, tuning, at)
                    .map(activation -> goldens.get(rows.get(activation.version()).goldenId())));
  }

  private Optional<Golden> latest(List<Golden> among, Instant at) {
    return activations.stream()
        .filter(activation -> !activation.from().isAfter(at))
        .filter(
            activation ->
                among.stream().anyMatch(golden -> golden.id().equals(activation.version())))
        .max(Comparator.comparing(Activation::from).thenComparing(Activation::setAt))
        .map(activation -> goldens.get(activation.version()));
  }

  private static boolean isOf(Limits row, String product, String tuning) {
    return row != null && row.product().equals(product) && row.tuning().equals(tuning);
  }

  /**
   * @return from when the version holds, by its last activation; empty if it never was activated
   */
  Optional<Instant> activeFrom(UUID version) {
    return activations.stream()
        .filter(activation -> activation.version().equals(version))
        .max(Comparator.comparing(Activation::setAt))
        .map(Activation::from);
  }
}
