package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class SwapStudyTests {
  /** The station's difference and the pair's, as different as two smooth curves can be. */
  private static final Curve STATION = Curve.from(hz -> 0.4 + 0.3 * Math.log10(hz / 1000));

  private static final Curve PAIR = Curve.from(hz -> -0.8 * Math.sin(3 * Math.log10(hz)));
  private static final Curve LEFT_EARPIECE =
      Curve.from(hz -> 100 + 5 * Math.cos(2 * Math.log10(hz)));

  @Nested
  class WithoutScatter {
    private final SwapStudy study =
        SwapStudy.of(
            List.of(differenceOnBench(false), differenceOnBench(false), differenceOnBench(false)),
            List.of(differenceOnBench(true), differenceOnBench(true), differenceOnBench(true)));

    /** Levels near 100 dB in double: 1e-12 is some ten units in the last place. */
    @Test
    void tellsTheStationsDifferenceFromThePairs() {
      for (int i = 0; i < Grid.POINTS; i++) {
        assertThat(study.leftMinusRight().at(i)).isCloseTo(STATION.at(i), within(1e-12));
        assertThat(study.pairDifference().at(i)).isCloseTo(PAIR.at(i), within(1e-12));
      }
    }

    @Test
    void isCertain() {
      assertThat(study.scatterDb()).isCloseTo(0, within(1e-12));
      assertThat(study.uncertainty().at(100)).isCloseTo(0, within(1e-12));
    }

    /**
     * The correction as judging applies it (half from the left, half to the right) must give the
     * pair's own difference.
     */
    @Test
    void leavesThePairsOwnDifferenceOnceApplied() {
      Curve left = LEFT_EARPIECE.plus(STATION.times(0.5));
      Curve right = LEFT_EARPIECE.minus(PAIR).minus(STATION.times(0.5));
      Curve corrected =
          left.minus(study.leftMinusRight().times(0.5))
              .minus(right.plus(study.leftMinusRight().times(0.5)));
      assertThat(corrected.at(60)).isCloseTo(PAIR.at(60), within(1e-12));
    }

    /**
     * Told by earpiece, the swapped left − right is e − s, and half the difference of the two
     * curves is s again.
     */
    @Test
    void isHalfTheDifferenceOfTheCurvesToldByEarpiece() {
      Curve swappedByEarpiece = differenceOnBench(true).times(-1);
      Curve half = differenceOnBench(false).minus(swappedByEarpiece).times(0.5);
      assertThat(half.at(80)).isCloseTo(study.leftMinusRight().at(80), within(1e-12));
    }
  }

  @Nested
  class WithScatter {
    /**
     * By hand: marked 1, 2, 3 (sd 1, mean 2), swapped 0, 0, 0 (sd 0): s = 1, u = ½·√(1/3), e = 1.
     */
    @Test
    void hasTheStandardErrorOfHalfTheSum() {
      SwapStudy study =
          SwapStudy.of(List.of(flat(1), flat(2), flat(3)), List.of(flat(0), flat(0), flat(0)));
      assertThat(study.leftMinusRight().at(7)).isCloseTo(1, within(1e-12));
      assertThat(study.pairDifference().at(7)).isCloseTo(1, within(1e-12));
      assertThat(study.uncertainty().at(7)).isCloseTo(0.5 * Math.sqrt(1 / 3.0), within(1e-12));
      assertThat(study.scatterDb()).isCloseTo(Math.sqrt(0.5), within(1e-12));
    }

    /**
     * The uncertainty said must be the scatter seen: 2000 studies of 4 + 5 seatings with sd 0.5 dB.
     * The sd of s over the studies is known to 1/√(2·2000) = 1.6 %; the mean u² has four of these;
     * 8 % is five of the larger one.
     */
    @Test
    void saysTheScatterThatRepeatedStudiesShow() {
      Random random = new Random(42);
      double sumSquares = 0;
      double sumVariance = 0;
      int studies = 2000;
      for (int k = 0; k < studies; k++) {
        SwapStudy study = SwapStudy.of(scattered(random, 4, 0.5), scattered(random, 5, 0.5));
        sumSquares += Math.pow(study.leftMinusRight().at(50), 2);
        sumVariance += Math.pow(study.uncertainty().at(50), 2);
      }
      assertThat(Math.sqrt(sumVariance / studies))
          .isCloseTo(Math.sqrt(sumSquares / studies), within(0.08 * 0.167));
    }

    @Test
    void namesTheSeatingThatStrays() {
      assertThat(SwapStudy.farthest(List.of(flat(0.1), flat(-0.1), flat(4), flat(0)))).isEqualTo(2);
    }
  }

  private static List<Curve> scattered(Random random, int count, double sd) {
    List<Curve> curves = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      curves.add(Curve.from(hz -> sd * random.nextGaussian()));
    }
    return curves;
  }

  private static Curve flat(double db) {
    return Curve.from(hz -> db);
  }

  /**
   * Left simulator − right simulator as the bench shows it: each simulator adds half of the
   * station's difference, with its sign.
   */
  private static Curve differenceOnBench(boolean swapped) {
    Curve rightEarpiece = LEFT_EARPIECE.minus(PAIR);
    Curve onLeft = (swapped ? rightEarpiece : LEFT_EARPIECE).plus(STATION.times(0.5));
    Curve onRight = (swapped ? LEFT_EARPIECE : rightEarpiece).minus(STATION.times(0.5));
    return onLeft.minus(onRight);
  }
}
