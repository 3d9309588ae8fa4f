package evenpair.tolerance;

import static evenpair.tolerance.Pairs.plain;
import static evenpair.tolerance.Pairs.without;
import static evenpair.tolerance.SimulatedMounting.GOLDEN;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Rules and thresholds are common practice, simulated; no standard is behind them. */
class SeatingCheckTests {
  final SeatingCheck check = SeatingCheck.of(plain(), GOLDEN);

  private static SimulatedMounting good() {
    return new SimulatedMounting();
  }

  private Optional<SeatingSuspicion> look(SimulatedMounting mounting) {
    return check.examine(mounting.channel(), Channel.LEFT);
  }

  private List<SeatingSuspicion> look(
      SimulatedMounting left, SimulatedMounting right, Reason... earlier) {
    return check.examine(new MeasuredPair(left.channel(), right.channel()), List.of(earlier));
  }

  @Test
  void suspectsNothingOfAGoodMounting() {
    assertThat(look(good(), good())).isEmpty();
    assertThat(look(good().louder(-5))).as("a quiet unit is judged by its level").isEmpty();
  }

  @Nested
  class OffTheSimulator {
    @Test
    void isToldByAResponseMoreThan20DbBelowGolden() {
      SeatingSuspicion suspicion = look(good().louder(-27)).orElseThrow();

      assertThat(suspicion.kind()).isEqualTo(ReasonKind.OFF_SIMULATOR);
      assertThat(suspicion.size()).isCloseTo(27, within(1e-9));
      assertThat(look(good().louder(-19.9))).isEmpty();
    }

    @Test
    void isToldThoughNoiseFillsTheDeepestBass() {
      Curve level = good().louder(-40).level();
      double[] db = level.toArray();
      for (int i = 0; Grid.hz(i) < 35; i++) {
        db[i] = 90;
      }

      assertThat(check.examine(Pairs.channel(Curve.of(db)), Channel.RIGHT))
          .map(SeatingSuspicion::kind)
          .contains(ReasonKind.OFF_SIMULATOR);
    }

    @Test
    void isNotADriverThatIsDead() {
      // everything below 5 kHz is gone, the tweeter plays
      Curve level = good().level();
      double[] db = level.toArray();
      for (int i = 0; Grid.hz(i) < 5000; i++) {
        db[i] -= 50;
      }

      assertThat(check.examine(Pairs.channel(Curve.of(db)), Channel.LEFT))
          .map(SeatingSuspicion::kind)
          .isNotEqualTo(Optional.of(ReasonKind.OFF_SIMULATOR));
    }
  }

  @Nested
  class Leak {
    @ParameterizedTest
    @ValueSource(doubles = {40, 80, 150, 300, 500})
    void isFoundAndSaysWhatIsLost(double cornerHz) {
      SeatingSuspicion suspicion = look(good().leaking(cornerHz)).orElseThrow();

      assertThat(suspicion.kind()).isEqualTo(ReasonKind.LEAK);
      assertThat(suspicion.channel()).isEqualTo(Channel.LEFT);
      assertThat(suspicion.limit()).isEqualTo(3);
      // the corner is fitted without noise; 1/12-octave smoothing and the finest step of the search
      // (7 % ÷ 16) leave about a percent
      assertThat(suspicion.atHz()).isCloseTo(cornerHz, within(0.02 * cornerHz));
    }

    @Test
    void ofSecondOrderIsFoundWithAnyDamping() {
      for (double q : new double[] {0.5, 0.7, 1, 1.2}) {
        assertThat(look(good().leakingWithMass(90, q)))
            .map(SeatingSuspicion::kind)
            .contains(ReasonKind.LEAK);
      }
    }

    @Test
    void losesTheMeanDeviationOf20To50Hz() {
      SeatingSuspicion suspicion = look(good().leaking(60)).orElseThrow();

      // mean of 10·lg(1 + 60²/f²) over log f from 20 to 50 Hz less that from 300 Hz to 1 kHz,
      // worked
      // out apart by quadrature: 6.731 − 0.065 dB. Sum and integral differ by the ends, smoothing
      // lifts the lowest point: 0.02 dB
      assertThat(suspicion.size()).isCloseTo(6.666, within(0.02));
    }

    @ParameterizedTest
    @ValueSource(doubles = {4, 6, 9, 14})
    void isNotAWeakBassDriver(double lossDb) {
      for (double cornerHz : new double[] {110, 180, 300, 500}) {
        assertThat(look(good().weakInTheBass(cornerHz, lossDb))).isEmpty();
      }
    }

    @Test
    void belowTheSetsLimitIsLeftToJudging() {
      assertThat(look(good().leaking(25))).isEmpty();
    }

    @Test
    void cannotBeToldFromACurveThatDoesNotReachTheBass() {
      Curve cut = without(good().leaking(200).level(), 20, 30);

      assertThat(check.examine(Pairs.channel(cut), Channel.LEFT)).isEmpty();
    }

    @Test
    void repeatsIfATryBeforeLostTheSameWithin1Db() {
      Reason before = look(good().leaking(60)).orElseThrow().reason();

      assertThat(look(good().leaking(63), good(), before))
          .extracting(SeatingSuspicion::channel, SeatingSuspicion::repeats)
          .containsExactly(tuple(Channel.LEFT, true));
      assertThat(look(good().leaking(90), good(), before).get(0).repeats()).isFalse();
      assertThat(look(good(), good().leaking(60), before).get(0).repeats())
          .as("the other earpiece leaked then")
          .isFalse();
    }

    @Test
    void thatRepeatsPointsToDriverOrSeal() {
      Reason before = look(good().leaking(60)).orElseThrow().reason();
      SeatingSuspicion again = look(good().leaking(60), good(), before).get(0);

      assertThat(ReasonText.of(again.reason()).key())
          .isEqualTo("reason.leak.channel.numbers.repeats");
      assertThat(ReasonText.of(again.seal()).key()).isEqualTo("reason.seal.channel.repeats");
    }
  }

  @Nested
  class Depth {
    @Test
    void isToldByTheCanalsPeakMovedByMoreThanTheSetAllows() {
      SeatingSuspicion deep = look(good().deeper(0.12)).orElseThrow();
      SeatingSuspicion shallow = look(good().deeper(-0.12)).orElseThrow();

      assertThat(deep.kind()).isEqualTo(ReasonKind.DEPTH);
      // the driver's falling treble pulls the peak of the whole curve by some tenths of a percent
      assertThat(deep.size()).isCloseTo(12, within(0.7));
      assertThat(shallow.size()).isCloseTo(-12, within(0.7));
      assertThat(ReasonText.of(deep.reason()).key()).isEqualTo("reason.depth.channel.deep");
      assertThat(ReasonText.of(shallow.reason()).key()).isEqualTo("reason.depth.channel.shallow");
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.25, -0.18, -0.1, 0.1, 0.18, 0.25})
    void isToldUpToAQuarter(double share) {
      assertThat(look(good().deeper(share))).map(SeatingSuspicion::kind).contains(ReasonKind.DEPTH);
    }

    @Test
    void isNotADriverThatLeavesALowerPeakElsewhere() {
      double[] db = good().deeper(0.15).level().toArray();
      for (int i = Grid.nearest(4000); i < db.length; i++) {
        db[i] -= 6;
      }

      assertThat(check.examine(Pairs.channel(Curve.of(db)), Channel.LEFT)).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.07, -0.03, 0.03, 0.07})
    void insideTheSetsLimitIsGood(double share) {
      assertThat(look(good().deeper(share))).isEmpty();
    }

    @Test
    void ofLeftAndRightMayNotBeFartherApartThanOnePointFourTimesThat() {
      List<SeatingSuspicion> apart = look(good().deeper(0.065), good().deeper(-0.065));

      assertThat(apart).hasSize(1);
      assertThat(apart.get(0).channel()).isNull();
      // 1.065/0.935 − 1 = 13.9 %, allowed 1.4 × 8 = 11.2 %
      assertThat(apart.get(0).size()).isCloseTo(13.9, within(0.7));
      assertThat(apart.get(0).limit()).isCloseTo(11.2, within(1e-9));
      assertThat(ReasonText.of(apart.get(0).reason()).key()).isEqualTo("reason.depth.pair.deep");
      assertThat(look(good().deeper(0.045), good().deeper(-0.045))).isEmpty();
    }

    @Test
    void isNotLookedAtWhereTheGoldenHasASecondPeakCloseBy() {
      GoldenResponse twoPeaks = withPeak(9500, 9);
      SeatingCheck blind = SeatingCheck.of(plain(), twoPeaks);

      assertThat(check.tellsDepth()).isTrue();
      assertThat(blind.tellsDepth()).isFalse();
      assertThat(blind.examine(good().deeper(0.2).channel(), Channel.LEFT)).isEmpty();
    }

    @Test
    void isLookedAtWhereASecondPeakIsMuchLower() {
      assertThat(SeatingCheck.of(plain(), withPeak(9900, 4)).tellsDepth()).isTrue();
    }

    private GoldenResponse withPeak(double hz, double db) {
      return new GoldenResponse(
          GOLDEN
              .level()
              .plus(Curve.from(f -> db * Math.exp(-Math.pow(Math.log(f / hz) / 0.03, 2)))),
          Optional.empty());
    }

    @Test
    void isNotToldWithoutAPeakInTheSpan() {
      GoldenResponse flat = new GoldenResponse(Pairs.flat(100), Optional.empty());

      assertThat(SeatingCheck.of(plain(), flat).tellsDepth()).isFalse();
    }
  }

  @Test
  void looksForALeakBeforeDepth() {
    assertThat(look(good().leaking(200).deeper(0.15)))
        .map(SeatingSuspicion::kind)
        .contains(ReasonKind.LEAK);
  }

  @Test
  void namesBothEarpiecesIfBothLeak() {
    assertThat(look(good().leaking(200), good().leaking(80)))
        .extracting(SeatingSuspicion::channel)
        .containsExactly(Channel.LEFT, Channel.RIGHT);
  }
}
