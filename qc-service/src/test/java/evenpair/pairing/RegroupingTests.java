package evenpair.pairing;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Curve;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.tolerance.Channel;
import evenpair.tolerance.PairFit;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class RegroupingTests {
  private static final PairFit FIT = LoosePool.fit(false);

  private static Regrouping regroup(List<InspectedPair> units) {
    return Regrouping.of(
        FIT, LoosePool.side(FIT, units, Channel.LEFT), LoosePool.side(FIT, units, Channel.RIGHT));
  }

  private static InspectedPair unit(String serial, double left, double right) {
    return LoosePool.unit(
        serial, "bench-1", Curve.from(hz -> left), Curve.from(hz -> right), Optional.empty());
  }

  @Test
  void crossesTwoPairsThatMismatchTheSameWay() {
    Regrouping made = regroup(List.of(unit("A", 101, 99.5), unit("B", 99.5, 101)));

    assertThat(made.asBuilt()).isEqualTo(2);
    assertThat(made.asBuiltFeasible()).isZero();
    assertThat(made.pairs()).hasSize(2);
    assertThat(made.pairs())
        .allSatisfy(pair -> assertThat(pair.asBuilt()).isFalse())
        .allSatisfy(pair -> assertThat(pair.cost().cost()).isZero());
  }

  @Test
  void leavesAGoodPairAsBuilt() {
    Regrouping made = regroup(List.of(unit("A", 102, 102), unit("B", 100, 100)));

    assertThat(made.pairs()).allSatisfy(pair -> assertThat(pair.asBuilt()).isTrue());
    assertThat(made.takeBack()).isEmpty();
  }

  @Test
  void namesWhoStaysAlone() {
    Regrouping made = regroup(List.of(unit("A", 102, 100), unit("B", 97.5, 104)));

    assertThat(made.pairs()).isEmpty();
    assertThat(made.alone()).extracting(Loose::name).containsExactly("A.L", "B.L", "A.R", "B.R");
  }

  @ParameterizedTest
  @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
  void neverHasFewerPairsThanWereBuilt(long seed) {
    Regrouping made = regroup(LoosePool.units(seed, 40));

    assertThat(made.pairs().size()).isGreaterThanOrEqualTo(made.asBuiltFeasible());
    assertThat(made.pairs()).extracting(pair -> pair.right().name()).doesNotHaveDuplicates();
    assertThat(made.pairs()).allSatisfy(pair -> assertThat(pair.cost().feasible()).isTrue());
    assertThat(made.pairs().size() * 2 + made.alone().size()).isEqualTo(80);
  }
}
