package evenpair.pairing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitCurves;
import evenpair.tolerance.PairFit;
import evenpair.tolerance.Uncertainty;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class PairCostsTests {
  private static final PairFit SIMPLE = LoosePool.fit(false);

  private static PairCosts costs(PairFit fit, List<InspectedPair> units) {
    return new PairCosts(
        fit, LoosePool.side(fit, units, Channel.LEFT), LoosePool.side(fit, units, Channel.RIGHT));
  }

  @Test
  void isTheLargestShareOfAMatchLimit() {
    // left 0.5 dB louder everywhere: half of the 1 dB that the mid region and the balance allow
    InspectedPair unit =
        LoosePool.unit(
            "A", "bench-1", Curve.from(hz -> 100.5), Curve.from(hz -> 100), Optional.empty());

    assertThat(costs(SIMPLE, List.of(unit)).all()).containsExactly(Assignment.SCALE / 2);
  }

  @Test
  void saysWhereAndByHowMuch() {
    // 2 dB at 8 kHz only: the limit there lies between 2.5 and 4 dB, linear in log f
    double[] bump = Curve.from(hz -> 100).toArray();
    int at = Grid.nearest(8000);
    bump[at] += 2;
    InspectedPair unit =
        LoosePool.unit("A", "bench-1", Curve.from(hz -> 100), Curve.of(bump), Optional.empty());
    double limit = 2.5 + 1.5 * Math.log(Grid.hz(at) / 6000) / Math.log(16_000.0 / 6000);

    PairCost cost = costs(SIMPLE, List.of(unit)).of(0, 0);

    assertThat(cost.feasible()).isTrue();
    assertThat(cost.worst()).isEqualTo(at);
    assertThat(cost.differenceDb()).isEqualTo(-2);
    // the same formula by hand; only rounding (1e-15) may part them
    assertThat(cost.limitDb()).isCloseTo(limit, within(1e-12));
    assertThat(cost.cost()).isCloseTo(2 / limit, within(1e-12));
  }

  @Test
  void tellsTheBalance() {
    // the level is taken over 300 Hz–3 kHz
    Curve loud = Curve.from(hz -> hz > 290 && hz < 3100 ? 100.5 : 100);
    InspectedPair unit =
        LoosePool.unit("A", "bench-1", loud, Curve.from(hz -> 100), Optional.empty());

    PairCost cost = costs(SIMPLE, List.of(unit)).of(0, 0);

    // a median of equal values; rounding at 100 dB is 1e-14
    assertThat(cost.balanceDb()).isCloseTo(0.5, within(1e-9));
    assertThat(cost.balanceRatio()).isCloseTo(0.5, within(1e-9));
  }

  @Test
  void aPairAtItsLimitMayBeMadeAndOneBeyondMayNot() {
    InspectedPair at =
        LoosePool.unit(
            "A", "bench-1", Curve.from(hz -> 101), Curve.from(hz -> 100), Optional.empty());
    InspectedPair beyond =
        LoosePool.unit(
            "B", "bench-1", Curve.from(hz -> 101.001), Curve.from(hz -> 100), Optional.empty());

    assertThat(costs(SIMPLE, List.of(at)).all()).containsExactly(Assignment.SCALE);
    assertThat(costs(SIMPLE, List.of(beyond)).all()).containsExactly(Assignment.INFEASIBLE);
  }

  @Test
  void aPairWithoutDataWhereItMustBeJudgedMayNotBeMade() {
    double[] gap = Curve.from(hz -> 100).toArray();
    gap[Grid.nearest(1000)] = Double.NaN;
    InspectedPair unit =
        LoosePool.unit("A", "bench-1", Curve.of(gap), Curve.from(hz -> 100), Optional.empty());

    assertThat(costs(SIMPLE, List.of(unit)).all()).containsExactly(Assignment.INFEASIBLE);
    assertThat(costs(SIMPLE, List.of(unit)).of(0, 0).feasible()).isFalse();
  }

  /** The early exit, the order of points and the flat arrays change nothing of the costs. */
  @Test
  void isTheSameAsAPlainLoopOverTheGrid() {
    List<InspectedPair> units = LoosePool.units(20261125, 60);
    double[] limits = LimitCurves.of(LoosePool.set(false)).matchDb();
    List<Loose> lefts = LoosePool.side(SIMPLE, units, Channel.LEFT);
    List<Loose> rights = LoosePool.side(SIMPLE, units, Channel.RIGHT);

    int[] all = new PairCosts(SIMPLE, lefts, rights).all();

    int feasible = 0;
    for (int i = 0; i < units.size(); i++) {
      for (int j = 0; j < units.size(); j++) {
        double cost = 0;
        for (int f = 0; f < Grid.POINTS; f++) {
          if (!Double.isNaN(limits[f])) {
            double l = units.get(i).pair().left().level().at(f);
            double r = units.get(j).pair().right().level().at(f);
            cost = Math.max(cost, Math.abs(l - r) / limits[f]);
          }
        }
        double a = lefts.get(i).measured().alignmentDb();
        double b = rights.get(j).measured().alignmentDb();
        cost = Math.max(cost, Math.abs(a - b));
        int found = all[i * units.size() + j];
        assertThat(found == Assignment.INFEASIBLE).isEqualTo(cost > 1);
        if (cost <= 1) {
          // a product with the inverse limit instead of a quotient may round the other way
          assertThat((double) found).isCloseTo(cost * 1e9, within(1.0));
        }
        feasible += cost <= 1 ? 1 : 0;
      }
    }
    assertThat(feasible).as("of 3600, so that both kinds were met").isBetween(300, 3300);
  }

  @Test
  void aGuardedSetTakesTheGuardBandOffAndMoreOfItBetweenStations() {
    PairFit guarded = LoosePool.fit(true);
    Uncertainty u = new Uncertainty(Curve.from(hz -> 0.1), Curve.from(hz -> 0.1), 0.1, 0.1);
    Curve louder = Curve.from(hz -> 100.6);
    Curve flat = Curve.from(hz -> 100);
    List<InspectedPair> units =
        List.of(
            LoosePool.unit("A", "bench-1", louder, louder, Optional.of(u)),
            LoosePool.unit("B", "bench-1", flat, flat, Optional.of(u)),
            LoosePool.unit("C", "bench-2", flat, flat, Optional.of(u)));

    PairCosts costs = costs(guarded, units);

    // by hand: 1 dB − 2·0.1 dB on one station; 1 dB − 2·√(4·0.01) = 0.6 dB in the mid region and
    // 1 dB − 2·√0.02 for the balance between two
    assertThat(costs.of(0, 1).cost()).isCloseTo(0.6 / 0.8, within(1e-9));
    assertThat(costs.of(0, 2).limitDb()).isCloseTo(0.6, within(1e-9));
    assertThat(costs.of(0, 2).cost()).isCloseTo(1.0, within(1e-9));
  }
}
