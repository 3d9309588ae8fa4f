package evenpair.pairing;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class AssignmentTests {
  private static final int NO = Assignment.INFEASIBLE;

  /** The best of all choices, by trying every one of them: knows nothing of flows or duals. */
  private static final class EveryChoice {
    private final int lefts;
    private final int rights;
    private final int[] costs;
    private int mostPairs;
    private long leastCost;

    EveryChoice(int lefts, int rights, int[] costs) {
      this.lefts = lefts;
      this.rights = rights;
      this.costs = costs;
      tryLeft(0, 0, 0, 0);
    }

    private void tryLeft(int left, int taken, int pairs, long cost) {
      if (left == lefts) {
        if (pairs > mostPairs || pairs == mostPairs && cost < leastCost) {
          mostPairs = pairs;
          leastCost = cost;
        }
        return;
      }
      tryLeft(left + 1, taken, pairs, cost);
      for (int right = 0; right < rights; right++) {
        int price = costs[left * rights + right];
        if (price != NO && (taken & 1 << right) == 0) {
          tryLeft(left + 1, taken | 1 << right, pairs + 1, cost + price);
        }
      }
    }
  }

  @Nested
  class SmallPools {
    /** 400 pools of 1 to 7 on either side; from nearly all pairs feasible to nearly none. */
    static Stream<Integer> seeds() {
      return IntStream.range(0, 400).boxed();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void getTheMostPairsAtTheLeastCost(int seed) {
      Random random = new Random(seed);
      int lefts = 1 + random.nextInt(7);
      int rights = 1 + random.nextInt(7);
      double feasible = random.nextDouble();
      // few different costs in every second pool, so that ties are met too
      int steps = seed % 2 == 0 ? 4 : Assignment.SCALE;
      int[] costs =
          IntStream.range(0, lefts * rights)
              .map(
                  e ->
                      random.nextDouble() < feasible
                          ? (int) ((long) random.nextInt(steps) * Assignment.SCALE / steps)
                          : NO)
              .toArray();

      int[] mates = new Assignment(lefts, rights, costs).solve();

      EveryChoice best = new EveryChoice(lefts, rights, costs);
      assertThat(pairs(mates)).isEqualTo(best.mostPairs);
      assertThat(cost(mates, rights, costs)).isEqualTo(best.leastCost);
      assertThat(Arrays.stream(mates).filter(mate -> mate >= 0).distinct().count())
          .isEqualTo(best.mostPairs);
    }
  }

  @Test
  void givesUpACheapPairForOnePairMore() {
    // left 0 would go best with right 0; but then left 1, which suits right 0 only, stays alone
    int[] costs = {1, Assignment.SCALE, Assignment.SCALE, NO};

    assertThat(new Assignment(2, 2, costs).solve()).containsExactly(1, 0);
  }

  @Test
  void pairsNobodyWhereNobodySuits() {
    assertThat(new Assignment(2, 3, new int[] {NO, NO, NO, NO, NO, NO}).solve())
        .containsExactly(Assignment.ALONE, Assignment.ALONE);
    assertThat(new Assignment(2, 0, new int[0]).solve()).containsOnly(Assignment.ALONE);
    assertThat(new Assignment(0, 2, new int[0]).solve()).isEmpty();
  }

  @Test
  void bearsTheLargestCostsOfALargePool() {
    // every cost is the limit itself: the sum inside the solver is as large as it can get
    int n = 600;
    int[] costs = new int[n * n];
    Arrays.fill(costs, Assignment.SCALE);
    IntStream.range(0, n).forEach(i -> costs[i * n + (i + 7) % n] = Assignment.SCALE - 1);

    int[] mates = new Assignment(n, n, costs).solve();

    assertThat(IntStream.range(0, n).allMatch(i -> mates[i] == (i + 7) % n)).isTrue();
  }

  private static int pairs(int[] mates) {
    return (int) Arrays.stream(mates).filter(mate -> mate >= 0).count();
  }

  private static long cost(int[] mates, int rights, int[] costs) {
    return IntStream.range(0, mates.length)
        .filter(i -> mates[i] >= 0)
        .mapToLong(i -> costs[i * rights + mates[i]])
        .peek(cost -> assertThat(cost).isNotNegative())
        .sum();
  }
}
