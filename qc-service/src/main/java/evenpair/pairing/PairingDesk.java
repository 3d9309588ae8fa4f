package evenpair.pairing;

import evenpair.access.SignedIn;
import evenpair.inspections.PairedEarpieces;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.pairing.PairingJson.Request;
import evenpair.pairing.PairingStore.Alone;
import evenpair.pairing.PairingStore.Head;
import evenpair.pairing.PairingStore.Row;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.PairFit;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.concurrent.Semaphore;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/** Makes proposals, one at a time: a large pool takes every core and some hundred megabytes. */
@Component
class PairingDesk {
  /**
   * Earpieces of one side; 3,000 by 3,000 costs take 36 MB here and ten times that in the solver.
   */
  static final int MOST = 3000;

  private final PairedEarpieces earpieces;
  private final Products products;
  private final PoolGathering gathering;
  private final PairingStore store;
  private final SignedIn signedIn;
  private final Ids ids;
  private final Clock clock;
  private final Semaphore turn = new Semaphore(1, true);

  PairingDesk(
      PairedEarpieces earpieces,
      Products products,
      PoolGathering gathering,
      PairingStore store,
      SignedIn signedIn,
      Ids ids,
      Clock clock) {
    this.earpieces = earpieces;
    this.products = products;
    this.gathering = gathering;
    this.store = store;
    this.signedIn = signedIn;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * @return the id of the stored proposal
   * @throws Refusal for what is unknown, or too large a pool
   */
  UUID propose(Request request) {
    StoredLimitSet limits = limits(request);
    PairFit fit = PairFit.of(limits.set(), limits.golden());
    turn.acquireUninterruptibly();
    try {
      Pool pool = gathering.gather(request, fit);
      requireNotTooLarge(pool);
      long start = System.nanoTime();
      Regrouping made = Regrouping.of(fit, pool.lefts(), pool.rights());
      double seconds = (System.nanoTime() - start) / 1e9;
      Head head = head(request, limits, fit, pool, made, seconds);
      store.add(head, signedIn.person().orElse(null), made.pairs(), fit.lines().frequencyHz());
      return head.id();
    } finally {
      turn.release();
    }
  }

  private StoredLimitSet limits(Request request) {
    Products.Product product =
        products
            .find(String.valueOf(request.product()))
            .orElseThrow(
                () ->
                    new Refusal(
                            404,
                            "unknown-product",
                            "There is no product \"" + request.product() + "\".")
                        .with("field", "product")
                        .with("choices", products.all().stream().map(p -> p.key()).toList()));
    if (request.tuning() == null || product.tuning(request.tuning()).isEmpty()) {
      throw new Refusal(
              404,
              "unknown-tuning",
              "The product %s has no tuning \"%s\".".formatted(product.key(), request.tuning()))
          .with("field", "tuning")
          .with("choices", product.tunings().stream().map(Products.Tuning::key).toList());
    }
    return (request.limitSet() == null
            ? products.activeAt(product.key(), request.tuning(), clock.instant())
            : products.limitSet(product.key(), request.tuning(), request.limitSet()))
        .orElseThrow(
            () ->
                new Refusal(
                        404,
                        "unknown-limit-set",
                        "There is no such limit set of %s %s."
                            .formatted(product.key(), request.tuning()))
                    .with("field", "limitSet"));
  }

  private static void requireNotTooLarge(Pool pool) {
    int largest = Math.max(pool.lefts().size(), pool.rights().size());
    if (largest > MOST) {
      throw new Refusal(
              422,
              "pool-too-large",
              "At most %d earpieces of a side are paired at once; this pool has %d. Take one batch at a time."
                  .formatted(MOST, largest))
          .with("expected", "at most " + MOST);
    }
  }

  private Head head(
      Request request,
      StoredLimitSet limits,
      PairFit fit,
      Pool pool,
      Regrouping made,
      double seconds) {
    return new Head(
        ids.next(),
        request.product(),
        request.tuning(),
        limits.id(),
        limits.set().version(),
        limits.digest(),
        fit.guarded(),
        clock.instant(),
        request,
        pool.lefts().size(),
        pool.rights().size(),
        made.asBuilt(),
        made.asBuiltFeasible(),
        made.asBuiltCost(),
        made.pairs().size(),
        made.cost(),
        seconds,
        pool.leftOut(),
        made.alone().stream().map(PairingDesk::alone).toList(),
        made.takeBack());
  }

  private static Alone alone(Loose loose) {
    return new Alone(
        loose.from().serial(), loose.side().word(), loose.name(), loose.from().inspection());
  }

  /**
   * @param left curve of the pair's left earpiece, as judged by the set of the pairing
   * @param lines what it is drawn against
   */
  record Drawn(PairFit.Earpiece left, PairFit.Earpiece right, PairFit.Lines lines) {}

  Drawn draw(Head head, Row pair) {
    StoredLimitSet limits = products.limitSet(head.limitSet());
    PairFit fit = PairFit.of(limits.set(), limits.golden());
    Map<UUID, InspectedPair> inspected =
        earpieces.of(List.of(pair.leftInspection(), pair.rightInspection())).stream()
            .collect(Collectors.toMap(InspectedPair::inspection, Function.identity()));
    return new Drawn(
        curve(fit, inspected.get(pair.leftInspection()), Channel.LEFT),
        curve(fit, inspected.get(pair.rightInspection()), Channel.RIGHT),
        fit.lines());
  }

  private static PairFit.Earpiece curve(PairFit fit, InspectedPair from, Channel channel) {
    return fit.look(from.pair(), from.uncertainty()).get(channel);
  }
}
