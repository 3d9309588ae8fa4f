package evenpair.pairing;

import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.tolerance.PairFit;
import evenpair.tolerance.PairFit.Limits;
import evenpair.tolerance.Uncertainty;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * The cost of every left with every right: the largest of |L_i − R_j|/match(f) over the grid and
 * |a_i − a_j|/balance. A pair may be made if that is 1 at most and every point that must be judged
 * has data. Levels lie in flat arrays, the points at which a pool spreads most against its limit
 * first, so that most pairs that may not be made are known after a few points.
 */
final class PairCosts {
  /** So many lefts are enough to order the points by. */
  private static final int ENOUGH = 64;

  private final List<Loose> lefts;
  private final List<Loose> rights;
  private final int[] leftWays;
  private final int[] rightWays;
  private final int[] order;
  private final double[] left;
  private final double[] right;
  private final Sheet[][] sheets;

  PairCosts(PairFit fit, List<Loose> lefts, List<Loose> rights) {
    this.lefts = lefts;
    this.rights = rights;
    Map<Way, Integer> ways = new LinkedHashMap<>();
    this.leftWays = ways(lefts, fit, ways);
    this.rightWays = ways(rights, fit, ways);
    List<Way> known = List.copyOf(ways.keySet());
    Limits[][] limits = new Limits[known.size()][known.size()];
    for (int a = 0; a < known.size(); a++) {
      for (int b = 0; b < known.size(); b++) {
        limits[a][b] = fit.limits(known.get(a).with(known.get(b)));
      }
    }
    this.order = known.isEmpty() ? new int[0] : order(limits[0][0]);
    this.left = flat(lefts);
    this.right = flat(rights);
    this.sheets = new Sheet[known.size()][known.size()];
    for (int a = 0; a < known.size(); a++) {
      for (int b = 0; b < known.size(); b++) {
        sheets[a][b] = new Sheet(limits[a][b]);
      }
    }
  }

  private static int[] ways(List<Loose> earpieces, PairFit fit, Map<Way, Integer> ways) {
    return earpieces.stream()
        .mapToInt(e -> ways.computeIfAbsent(Way.of(e.from(), fit.guarded()), w -> ways.size()))
        .toArray();
  }

  /**
   * @return row after row, one row a left: the cost times {@link Assignment#SCALE}, or {@link
   *     Assignment#INFEASIBLE}. Uses every core
   */
  int[] all() {
    int[] costs = new int[lefts.size() * rights.size()];
    IntStream.range(0, lefts.size())
        .parallel()
        .forEach(
            i -> {
              for (int j = 0; j < rights.size(); j++) {
                costs[i * rights.size() + j] = whole(sheets[leftWays[i]][rightWays[j]].cost(i, j));
              }
            });
    return costs;
  }

  /** A cost of 1 stays {@link Assignment#SCALE}; anything above it, or unknown, is infeasible. */
  private static int whole(double cost) {
    return cost <= 1 ? (int) Math.round(cost * Assignment.SCALE) : Assignment.INFEASIBLE;
  }

  /**
   * @return where and how much this pair differs most, whether it may be made or not
   */
  PairCost of(int left, int right) {
    return sheets[leftWays[left]][rightWays[right]].whole(left, right);
  }

  /**
   * How an earpiece was measured: what a difference between two is worth depends on both.
   *
   * @param uncertainty null for a set with simple acceptance
   */
  private record Way(String station, Uncertainty uncertainty) {
    static Way of(InspectedPair from, boolean guarded) {
      return guarded
          ? new Way(from.station(), from.uncertainty().orElseThrow())
          : new Way(null, null);
    }

    Optional<Uncertainty> with(Way right) {
      return uncertainty == null
          ? Optional.empty()
          : Optional.of(
              PairFit.together(uncertainty, right.uncertainty, station.equals(right.station)));
    }
  }

  private int[] order(Limits limits) {
    return Arrays.stream(limits.required())
        .boxed()
        .sorted(Comparator.comparingDouble(i -> -spread(i) / limits.matchDb()[i]))
        .mapToInt(Integer::intValue)
        .toArray();
  }

  private double spread(int point) {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Loose earpiece : lefts.subList(0, Math.min(ENOUGH, lefts.size()))) {
      double level = earpiece.measured().levelDb()[point];
      low = level < low ? level : low;
      high = level > high ? level : high;
    }
    return high > low ? high - low : 0;
  }

  private double[] flat(List<Loose> earpieces) {
    double[] flat = new double[earpieces.size() * order.length];
    for (int e = 0; e < earpieces.size(); e++) {
      double[] level = earpieces.get(e).measured().levelDb();
      for (int k = 0; k < order.length; k++) {
        flat[e * order.length + k] = level[order[k]];
      }
    }
    return flat;
  }

  private double difference(int i, int j, int point) {
    return lefts.get(i).measured().levelDb()[point] - rights.get(j).measured().levelDb()[point];
  }

  private double balance(int i, int j) {
    return lefts.get(i).measured().alignmentDb() - rights.get(j).measured().alignmentDb();
  }

  /** The limits that hold between two ways of measuring. */
  private final class Sheet {
    private final Limits limits;
    private final double[] limit;
    private final double[] inverse;
    private final boolean leavesRoom;

    Sheet(Limits limits) {
      this.limits = limits;
      this.limit = Arrays.stream(order).mapToDouble(i -> limits.matchDb()[i]).toArray();
      this.inverse = Arrays.stream(limit).map(l -> 1 / l).toArray();
      this.leavesRoom = limits.balanceDb() > 0 && Arrays.stream(limit).allMatch(l -> l > 0);
    }

    /**
     * @return the cost; above 1, or NaN, for a pair that may not be made
     */
    double cost(int i, int j) {
      double cost = Math.abs(balance(i, j)) / limits.balanceDb();
      if (!leavesRoom || !(cost <= 1)) {
        return Double.NaN;
      }
      int a = i * order.length;
      int b = j * order.length;
      for (int k = 0; k < limit.length; k++) {
        double difference = Math.abs(left[a + k] - right[b + k]);
        if (!(difference <= limit[k])) {
          return Double.NaN;
        }
        cost = Math.max(cost, difference * inverse[k]);
      }
      // a product may round to just above 1 where the quotient is 1
      return Math.max(Math.min(cost, 1), optional(i, j));
    }

    private double optional(int i, int j) {
      double cost = 0;
      for (int point : limits.optional()) {
        double ratio = ratio(i, j, point);
        cost = ratio > cost ? ratio : cost;
      }
      return cost;
    }

    private double ratio(int i, int j, int point) {
      double limitDb = limits.matchDb()[point];
      return limitDb > 0 ? Math.abs(difference(i, j, point)) / limitDb : Double.POSITIVE_INFINITY;
    }

    PairCost whole(int i, int j) {
      double match = 0;
      int worst = -1;
      boolean known = true;
      for (int point : limits.required()) {
        double ratio = ratio(i, j, point);
        known &= !Double.isNaN(ratio);
        if (ratio > match || worst < 0) {
          worst = point;
          match = ratio;
        }
      }
      for (int point : limits.optional()) {
        double ratio = ratio(i, j, point);
        if (ratio > match) {
          worst = point;
          match = ratio;
        }
      }
      double balanceRatio =
          limits.balanceDb() > 0
              ? Math.abs(balance(i, j)) / limits.balanceDb()
              : Double.POSITIVE_INFINITY;
      return new PairCost(
          known && match <= 1 && balanceRatio <= 1,
          known ? Math.max(match, balanceRatio) : Double.NaN,
          match,
          worst,
          worst < 0 ? Double.NaN : difference(i, j, worst),
          worst < 0 ? Double.NaN : limits.matchDb()[worst],
          balance(i, j),
          limits.balanceDb(),
          balanceRatio);
    }
  }
}
