package evenpair.pairing;

import evenpair.tolerance.PairFit;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;

/**
 * The best pairs of a pool, beside the pairs as they were built.
 *
 * @param pairs new ones first, then those that stay; each group in the order of the pool
 * @param alone earpieces without a mate, lefts first
 * @param asBuilt pairs of which both earpieces are in the pool
 * @param asBuiltFeasible of them those that keep the limits, by the same measure
 * @param takeBack serials of units that had passed and lose an earpiece to another pair
 */
record Regrouping(
    List<Made> pairs,
    List<Loose> alone,
    int asBuilt,
    int asBuiltFeasible,
    double asBuiltCost,
    double cost,
    List<String> takeBack) {

  record Made(Loose left, Loose right, PairCost cost) {
    boolean asBuilt() {
      return left.from().inspection().equals(right.from().inspection());
    }
  }

  static Regrouping of(PairFit fit, List<Loose> lefts, List<Loose> rights) {
    PairCosts costs = new PairCosts(fit, lefts, rights);
    int[] mates = new Assignment(lefts.size(), rights.size(), costs.all()).solve();
    List<Made> made = new ArrayList<>();
    List<Loose> alone = new ArrayList<>();
    boolean[] taken = new boolean[rights.size()];
    for (int i = 0; i < mates.length; i++) {
      if (mates[i] == Assignment.ALONE) {
        alone.add(lefts.get(i));
      } else {
        taken[mates[i]] = true;
        made.add(new Made(lefts.get(i), rights.get(mates[i]), costs.of(i, mates[i])));
      }
    }
    for (int j = 0; j < taken.length; j++) {
      if (!taken[j]) {
        alone.add(rights.get(j));
      }
    }
    made.sort(Comparator.comparing(Made::asBuilt));
    return beside(costs, lefts, rights, made, alone);
  }

  private static Regrouping beside(
      PairCosts costs, List<Loose> lefts, List<Loose> rights, List<Made> made, List<Loose> alone) {
    Map<UUID, Integer> rightOf = new HashMap<>();
    for (int j = 0; j < rights.size(); j++) {
      rightOf.put(rights.get(j).from().inspection(), j);
    }
    int asBuilt = 0;
    int feasible = 0;
    double cost = 0;
    for (int i = 0; i < lefts.size(); i++) {
      Integer mate = rightOf.get(lefts.get(i).from().inspection());
      if (mate != null) {
        PairCost found = costs.of(i, mate);
        asBuilt++;
        if (found.feasible()) {
          feasible++;
          cost += found.cost();
        }
      }
    }
    double proposed = made.stream().mapToDouble(pair -> pair.cost().cost()).sum();
    return new Regrouping(made, alone, asBuilt, feasible, cost, proposed, takeBack(made));
  }

  private static List<String> takeBack(List<Made> made) {
    TreeSet<String> serials = new TreeSet<>();
    for (Made pair : made) {
      for (Loose earpiece : List.of(pair.left(), pair.right())) {
        if (!pair.asBuilt() && "PASS".equals(earpiece.from().verdict())) {
          serials.add(earpiece.from().serial());
        }
      }
    }
    return List.copyOf(serials);
  }
}
