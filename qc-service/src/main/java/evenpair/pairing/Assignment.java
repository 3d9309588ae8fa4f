package evenpair.pairing;

import com.google.ortools.Loader;
import com.google.ortools.graph.LinearSumAssignment;
import com.google.ortools.graph.MaxFlow;
import java.util.Arrays;

/**
 * Chooses pairs among feasible ones: as many as can be, and of all choices with that many the one
 * whose costs have the smallest sum. Both by OR-Tools, in two steps, so that no large penalty for
 * an earpiece without a mate has to be balanced against the costs:
 *
 * <ol>
 *   <li>a maximum flow gives k, the largest number of feasible pairs;
 *   <li>m − k stand-ins are added to the left and n − k to the right (n lefts, m rights). A
 *       stand-in may take anyone of the other side at no cost, but no other stand-in. Every perfect
 *       assignment then holds exactly k true pairs, so the one of least cost is the answer.
 * </ol>
 *
 * <p>Costs are whole numbers, ratios times {@link #SCALE}. Rounding moves a sum of 3,000 costs by
 * at most 3,000·0.5/10⁹ = 1.5·10⁻⁶, far below what can be measured. The solver multiplies costs by
 * the number of nodes plus one and adds up over nodes: 10⁹ · 6,001 · 6,000 · a small factor stays
 * below 2⁶³ ≈ 9.2·10¹⁸.
 */
final class Assignment {
  /** A ratio of 1, the limit itself, as a whole number. */
  static final int SCALE = 1_000_000_000;

  /** The cost of a pair that may not be made. */
  static final int INFEASIBLE = -1;

  /** A left without a mate. */
  static final int ALONE = -1;

  private final int lefts;
  private final int rights;
  private final int[] costs;

  /**
   * @param costs row after row, one row a left: 0 to {@link #SCALE}, or {@link #INFEASIBLE}
   */
  Assignment(int lefts, int rights, int[] costs) {
    if (costs.length != lefts * rights) {
      throw new IllegalArgumentException(
          lefts + " by " + rights + " costs wanted, given " + costs.length);
    }
    this.lefts = lefts;
    this.rights = rights;
    this.costs = costs;
  }

  /** Loads the solver's native library, once. */
  private static final class Native {
    static {
      Loader.loadNativeLibraries();
    }

    static void load() {
      // the class's initialiser has done it
    }
  }

  /**
   * @return for each left the index of its right, or {@link #ALONE}
   */
  int[] solve() {
    Native.load();
    int pairs = mostPairs();
    int[] mates = new int[lefts];
    Arrays.fill(mates, ALONE);
    if (pairs > 0) {
      assign(pairs, mates);
    }
    return mates;
  }

  private int mostPairs() {
    if (lefts == 0 || rights == 0) {
      return 0;
    }
    MaxFlow flow = new MaxFlow();
    int source = lefts + rights;
    int sink = source + 1;
    for (int i = 0; i < lefts; i++) {
      flow.addArcWithCapacity(source, i, 1);
      for (int j = 0; j < rights; j++) {
        if (costs[i * rights + j] != INFEASIBLE) {
          flow.addArcWithCapacity(i, lefts + j, 1);
        }
      }
    }
    for (int j = 0; j < rights; j++) {
      flow.addArcWithCapacity(lefts + j, sink, 1);
    }
    MaxFlow.Status status = flow.solve(source, sink);
    if (status != MaxFlow.Status.OPTIMAL) {
      throw new IllegalStateException("the largest number of pairs was not found: " + status);
    }
    return (int) flow.getOptimalFlow();
  }

  private void assign(int pairs, int[] mates) {
    LinearSumAssignment solver = new LinearSumAssignment();
    addPairs(solver);
    addStandIns(solver, pairs);
    LinearSumAssignment.Status status = solver.solve();
    if (status != LinearSumAssignment.Status.OPTIMAL) {
      throw new IllegalStateException("no best assignment was found: " + status);
    }
    for (int i = 0; i < lefts; i++) {
      int mate = solver.getRightMate(i);
      mates[i] = mate < rights ? mate : ALONE;
    }
  }

  private void addPairs(LinearSumAssignment solver) {
    for (int i = 0; i < lefts; i++) {
      for (int j = 0; j < rights; j++) {
        int cost = costs[i * rights + j];
        if (cost != INFEASIBLE) {
          solver.addArcWithCost(i, j, cost);
        }
      }
    }
  }

  private void addStandIns(LinearSumAssignment solver, int pairs) {
    for (int s = 0; s < rights - pairs; s++) {
      for (int j = 0; j < rights; j++) {
        solver.addArcWithCost(lefts + s, j, 0);
      }
    }
    for (int s = 0; s < lefts - pairs; s++) {
      for (int i = 0; i < lefts; i++) {
        solver.addArcWithCost(i, rights + s, 0);
      }
    }
  }
}
