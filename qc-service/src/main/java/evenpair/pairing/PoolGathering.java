package evenpair.pairing;

import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.PairedEarpieces;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.inspections.PairedEarpieces.Whereabouts;
import evenpair.pairing.PairingJson.Request;
import evenpair.pairing.PairingJson.Single;
import evenpair.products.Products;
import evenpair.tolerance.Channel;
import evenpair.tolerance.PairFit;
import evenpair.tolerance.ReasonKind;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/** Finds the earpieces that a request names, and refuses names that nothing stands behind. */
@Component
class PoolGathering {
  /** So many names are written out in a refusal. */
  private static final int NAMED = 20;

  private static final Set<Channel> BOTH = EnumSet.allOf(Channel.class);

  private static final Map<String, Predicate<InspectedPair>> WHICH =
      Map.of(
          "all", pair -> true,
          "failed", pair -> "FAIL".equals(pair.verdict()),
          "failed-match", PoolGathering::failedMatch);

  private final PairedEarpieces earpieces;
  private final Products products;

  PoolGathering(PairedEarpieces earpieces, Products products) {
    this.earpieces = earpieces;
    this.products = products;
  }

  private static boolean failedMatch(InspectedPair pair) {
    return "FAIL".equals(pair.verdict())
        && pair.reasons().stream()
            .map(ReasonView::kind)
            .anyMatch(
                kind ->
                    kind.equals(ReasonKind.MATCH.word()) || kind.equals(ReasonKind.BALANCE.word()));
  }

  /**
   * @throws Refusal 422 naming everything that nothing stands behind, 400 for a request without a
   *     pool
   */
  Pool gather(Request request, PairFit fit) {
    Map<InspectedPair, Set<Channel>> named = new LinkedHashMap<>();
    ofBatch(request).forEach(pair -> named.put(pair, BOTH));
    ofInspections(request).forEach(pair -> named.put(pair, BOTH));
    ofSerials(request)
        .forEach((pair, channels) -> named.merge(pair, channels, PoolGathering::both));
    if (nothing(request)) {
      throw new Refusal(
              400,
              "invalid-field",
              "Name a pool: a \"batch\", \"serials\", \"inspections\" or \"earpieces\".")
          .with("field", "batch")
          .with("expected", "a batch, serials, inspections or earpieces");
    }
    Pool pool = new Pool(fit, products, whereabouts(request, named.keySet()));
    // newest first, so that an earpiece that was inspected twice counts as it was measured last
    named.keySet().stream()
        .sorted(Comparator.comparing(InspectedPair::at).reversed())
        .forEach(pair -> pool.add(pair, named.get(pair)));
    return pool;
  }

  private static Set<Channel> both(Set<Channel> a, Set<Channel> b) {
    Set<Channel> all = EnumSet.copyOf(a);
    all.addAll(b);
    return all;
  }

  private static boolean nothing(Request request) {
    return request.batch() == null
        && list(request.serials()).isEmpty()
        && list(request.inspections()).isEmpty()
        && list(request.earpieces()).isEmpty();
  }

  private Map<String, Whereabouts> whereabouts(Request request, Set<InspectedPair> pairs) {
    List<String> names =
        pairs.stream().flatMap(p -> Stream.of(p.leftEarpiece(), p.rightEarpiece())).toList();
    return earpieces.lastInspected(request.product(), request.tuning(), names);
  }

  private List<InspectedPair> ofBatch(Request request) {
    String which = request.which() == null ? "failed-match" : request.which();
    Predicate<InspectedPair> wanted = WHICH.get(which);
    if (wanted == null) {
      throw new Refusal(400, "invalid-field", "\"which\" cannot be \"" + which + "\".")
          .with("field", "which")
          .with("choices", WHICH.keySet().stream().sorted().toList());
    }
    if (request.batch() == null) {
      return List.of();
    }
    List<InspectedPair> all =
        earpieces.ofBatch(request.batch(), request.product(), request.tuning());
    if (all.isEmpty()) {
      throw new Refusal(
              404,
              "unknown-batch",
              "No unit of a batch \"%s\" has been judged as %s in %s."
                  .formatted(request.batch(), request.product(), request.tuning()))
          .with("field", "batch");
    }
    return all.stream().filter(wanted).toList();
  }

  private List<InspectedPair> ofInspections(Request request) {
    Set<UUID> wanted = new LinkedHashSet<>(list(request.inspections()));
    if (wanted.isEmpty()) {
      return List.of();
    }
    List<InspectedPair> found =
        earpieces.of(wanted).stream()
            .filter(
                pair ->
                    pair.product().equals(request.product())
                        && pair.tuning().equals(request.tuning()))
            .toList();
    found.forEach(pair -> wanted.remove(pair.inspection()));
    refuseUnknown(
        wanted.stream().map(UUID::toString).toList(),
        "inspections",
        "These are no closed inspections of " + request.product() + " in " + request.tuning());
    return found;
  }

  private Map<InspectedPair, Set<Channel>> ofSerials(Request request) {
    Map<String, Set<Channel>> wanted = new LinkedHashMap<>();
    List<String> unknown = new ArrayList<>();
    list(request.serials()).forEach(s -> want(s, BOTH, wanted, unknown));
    for (Single single : list(request.earpieces())) {
      want(single.serial(), EnumSet.of(channel(single)), wanted, unknown);
    }
    Map<InspectedPair, Set<Channel>> found = new LinkedHashMap<>();
    for (InspectedPair pair :
        earpieces.ofSerials(wanted.keySet(), request.product(), request.tuning())) {
      found.put(pair, wanted.remove(pair.serial()));
    }
    unknown.addAll(wanted.keySet());
    refuseUnknown(
        unknown,
        list(request.serials()).isEmpty() ? "earpieces" : "serials",
        "These units have not been judged as " + request.product() + " in " + request.tuning());
    return found;
  }

  private void want(
      String sent, Set<Channel> channels, Map<String, Set<Channel>> wanted, List<String> unknown) {
    Optional<String> serial = sent == null ? Optional.empty() : earpieces.serial(sent.strip());
    serial.ifPresentOrElse(
        s -> wanted.merge(s, channels, PoolGathering::both), () -> unknown.add(sent));
  }

  private static Channel channel(Single single) {
    for (Channel channel : Channel.values()) {
      if (channel.word().equals(single.channel())) {
        return channel;
      }
    }
    throw new Refusal(
            400,
            "invalid-field",
            "The channel of an earpiece is left or right, not \"" + single.channel() + "\".")
        .with("field", "earpieces")
        .with("choices", List.of("left", "right"));
  }

  private static void refuseUnknown(List<String> unknown, String field, String sentence) {
    if (!unknown.isEmpty()) {
      String more = unknown.size() > NAMED ? " and " + (unknown.size() - NAMED) + " more" : "";
      throw new Refusal(
              422,
              "unknown-earpieces",
              sentence
                  + ": "
                  + String.join(", ", unknown.stream().limit(NAMED).map(String::valueOf).toList())
                  + more
                  + ".")
          .with("field", field)
          .with("unknown", unknown.stream().map(String::valueOf).toList());
    }
  }

  private static <T> List<T> list(List<T> list) {
    return list == null ? List.of() : list;
  }
}
