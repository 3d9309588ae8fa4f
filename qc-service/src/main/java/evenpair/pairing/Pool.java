package evenpair.pairing;

import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.inspections.PairedEarpieces.Whereabouts;
import evenpair.products.Products;
import evenpair.tolerance.Channel;
import evenpair.tolerance.PairFit;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.RegionResult;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Which earpieces of a pool may be paired, and why the others may not. An earpiece must keep what
 * concerns it alone: level and windows by the set of the pairing, the rest as it was recorded.
 */
final class Pool {
  /** What a pair fails by, not an earpiece. */
  private static final Set<String> OF_THE_PAIR =
      Set.of(ReasonKind.MATCH.word(), ReasonKind.BALANCE.word());

  /** Looked at again by the set of the pairing. */
  private static final Set<String> LOOKED_AT_AGAIN =
      Set.of(ReasonKind.LEVEL.word(), ReasonKind.WINDOW.word());

  private final PairFit fit;
  private final Products products;
  private final Map<String, Whereabouts> whereabouts;
  private final Set<String> taken = new HashSet<>();
  private final List<Loose> lefts = new ArrayList<>();
  private final List<Loose> rights = new ArrayList<>();
  private final List<LeftOut> leftOut = new ArrayList<>();

  /**
   * @param whereabouts where earpieces with numbers of their own were inspected last
   */
  Pool(PairFit fit, Products products, Map<String, Whereabouts> whereabouts) {
    this.fit = fit;
    this.products = products;
    this.whereabouts = whereabouts;
  }

  List<Loose> lefts() {
    return lefts;
  }

  List<Loose> rights() {
    return rights;
  }

  List<LeftOut> leftOut() {
    return leftOut;
  }

  /** An earpiece that is there already is not added again. */
  void add(InspectedPair pair, Set<Channel> channels) {
    Optional<String> whole = wrongAsAWhole(pair);
    Map<Channel, PairFit.Earpiece> measured =
        whole.isPresent() ? Map.of() : fit.look(pair.pair(), pair.uncertainty());
    for (Channel channel : channels) {
      String name = channel == Channel.LEFT ? pair.leftEarpiece() : pair.rightEarpiece();
      if (!taken.add(channel + name)) {
        continue;
      }
      Optional<LeftOut> wrong =
          whole
              .map(why -> leftOut(pair, channel, name, why, Map.of()))
              .or(() -> wrong(pair, channel, name, measured.get(channel)));
      if (wrong.isPresent()) {
        leftOut.add(wrong.get());
      } else {
        (channel == Channel.LEFT ? lefts : rights)
            .add(new Loose(channel, name, pair, measured.get(channel)));
      }
    }
  }

  private Optional<String> wrongAsAWhole(InspectedPair pair) {
    if (pair.pair() == null) {
      return Optional.of("no-curves");
    }
    if (!fit.measuredAlike(products.limitSet(pair.limitSetId()).set())) {
      return Optional.of("measured-otherwise");
    }
    return fit.guarded() && pair.uncertainty().isEmpty()
        ? Optional.of("no-uncertainty")
        : Optional.empty();
  }

  private Optional<LeftOut> wrong(
      InspectedPair pair, Channel channel, String name, PairFit.Earpiece measured) {
    Whereabouts last = whereabouts.get(name);
    if (last != null
        && last.at().isAfter(pair.at())
        && !last.inspection().equals(pair.inspection())) {
      return Optional.of(leftOut(pair, channel, name, "regrouped", Map.of("unit", last.serial())));
    }
    Optional<ReasonView> fault = fault(pair, channel);
    if (fault.isPresent()) {
      return Optional.of(
          leftOut(pair, channel, name, "fault", Map.of("check", fault.get().kind())));
    }
    return measured.fault().map(found -> outside(pair, channel, name, found));
  }

  private static Optional<ReasonView> fault(InspectedPair pair, Channel channel) {
    return pair.reasons().stream()
        .filter(r -> !OF_THE_PAIR.contains(r.kind()) && !LOOKED_AT_AGAIN.contains(r.kind()))
        .filter(r -> r.channel() == null || r.channel().equals(channel.word()))
        .findFirst();
  }

  private static LeftOut outside(
      InspectedPair pair, Channel channel, String name, RegionResult found) {
    String check = found.check().word();
    if (!found.judged()) {
      Map<String, Object> where = new LinkedHashMap<>();
      where.put("region", found.region() == null ? check : found.region());
      return leftOut(pair, channel, name, "not-judged", where);
    }
    Map<String, Object> values = new LinkedHashMap<>();
    values.put("measured", found.worstDb());
    values.put("limit", found.limitDb());
    if (found.check() == ReasonKind.WINDOW) {
      values.put("region", found.region());
      values.put("frequency", found.atHz());
    }
    return leftOut(pair, channel, name, check, values);
  }

  private static LeftOut leftOut(
      InspectedPair pair, Channel channel, String name, String why, Map<String, Object> values) {
    return new LeftOut(pair.serial(), channel.word(), name, why, values);
  }
}
