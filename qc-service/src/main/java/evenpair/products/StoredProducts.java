package evenpair.products;

import evenpair.products.VersionRows.Activation;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionRows.SignOff;
import evenpair.tolerance.GoldenResponse;
import java.time.Clock;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Answers from a snapshot in memory, which is read again when the change number in the database is
 * another one.
 */
@Component
class StoredProducts implements Products {
  private final VersionStore store;
  private final GoldenDesk desk;
  private final Clock clock;
  private volatile Snapshot latest;

  StoredProducts(VersionStore store, GoldenDesk desk, Clock clock) {
    this.store = store;
    this.desk = desk;
    this.clock = clock;
  }

  /**
   * @return what every committed change up to now made of it. Not to be called by a transaction
   *     that changes versions itself: it would keep what may still be rolled back
   */
  Snapshot snapshot() {
    Snapshot known = latest;
    if (known == null || known.number() != store.changeNumber()) {
      known = Snapshot.of(store);
      latest = known;
    }
    return known;
  }

  @Override
  public List<Product> all() {
    return snapshot().products().stream().map(ProductDefinition::product).toList();
  }

  @Override
  public Optional<Product> find(String product) {
    return snapshot().product(product).map(ProductDefinition::product);
  }

  @Override
  public Optional<StoredLimitSet> activeAt(String product, String tuning, Instant at) {
    Snapshot snapshot = snapshot();
    return snapshot
        .activeAt(product, tuning, at)
        .map(Activation::version)
        .flatMap(snapshot::stored);
  }

  @Override
  public Optional<StoredLimitSet> limitSet(String product, String tuning, int version) {
    Snapshot snapshot = snapshot();
    return snapshot.limitSet(product, tuning, version).flatMap(row -> snapshot.stored(row.id()));
  }

  @Override
  public StoredLimitSet limitSet(UUID id) {
    return snapshot()
        .stored(id)
        .orElseThrow(() -> new IllegalArgumentException("there is no limit set " + id));
  }

  @Override
  public List<VersionFacts> limitSetHistory(String product, String tuning) {
    Snapshot snapshot = snapshot();
    return snapshot.limitSets(product, tuning).stream()
        .sorted(Comparator.comparingInt(Limits::version))
        .map(row -> facts(snapshot, row))
        .toList();
  }

  private static VersionFacts facts(Snapshot snapshot, Limits row) {
    Optional<SignOff> signOff = Optional.ofNullable(row.signOff());
    return new VersionFacts(
        row.version(),
        row.digest(),
        row.madeAt(),
        signOff.map(SignOff::at),
        signOff.map(SignOff::approver),
        signOff.map(SignOff::reason),
        snapshot.activeFrom(row.id()));
  }

  @Override
  public Optional<Approval> approvalOf(UUID limitSet) {
    return snapshot()
        .row(limitSet)
        .map(VersionRows.Limits::signOff)
        .map(signOff -> new Approval(signOff.approver(), signOff.reason(), signOff.at()));
  }

  @Override
  public Optional<GoldenResponse> expectedGolden(String product, String tuning) {
    return Expectation.of(snapshot(), product, tuning, clock.instant()).map(Expectation::response);
  }

  @Override
  public UUID draftGolden(
      String product,
      String tuning,
      String name,
      GoldenResponse golden,
      UUID author,
      Provenance provenance) {
    return desk.draft(product, tuning, name, golden, author, provenance).id();
  }
}
