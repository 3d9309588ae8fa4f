package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static evenpair.tolerance.Pairs.flat;
import static evenpair.tolerance.Pairs.moved;
import static evenpair.tolerance.Pairs.pair;
import static evenpair.tolerance.Pairs.plain;
import static evenpair.tolerance.Pairs.set;
import static evenpair.tolerance.Pairs.without;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Cases computed by hand on a flat golden response of 100 dB, unsmoothed. */
class JudgeTests {
  /** Sums and differences of a few doubles near 100: rounding stays far below this. */
  static final Offset<Double> ROUNDING = within(1e-9);

  final Judge judge = Judges.forLimits(plain(), FLAT);

  @Test
  void passesAPairThatIsTheGoldenResponse() {
    Judgement judgement = judge.judge(pair(flat(100), flat(100)));

    assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
    assertThat(judgement.reasons()).isEmpty();
    assertThat(judgement.leftLevelDb()).isZero();
    // 2 levels, 1 balance, 3 regions × (match + 2 windows)
    assertThat(judgement.results()).hasSize(12).allMatch(RegionResult::judged);
  }

  @Nested
  class Level {
    @Test
    void namesTheQuietEarpieceAndAbsorbsBalanceAndMatch() {
      Judgement judgement = judge.judge(pair(flat(100), flat(98)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
      assertThat(judgement.reasons())
          .containsExactly(
              new Reason(
                  ReasonKind.LEVEL, Channel.RIGHT, null, null, -2.0, -1.5, List.of("bass", "mid")));
    }

    @Test
    void isTheMedianSoThatOneDefectDoesNotTiltTheRest() {
      Curve dip = flat(100);
      for (int i = Grid.nearest(1000); i < Grid.nearest(1200); i++) {
        dip = moved(dip, Grid.hz(i), -12);
      }

      Judgement judgement = judge.judge(pair(dip, flat(100)));

      assertThat(judgement.leftLevelDb()).isZero();
      assertThat(judgement.reasons())
          .extracting(Reason::kind)
          .containsExactly(ReasonKind.WINDOW, ReasonKind.MATCH);
    }

    @Test
    void failsBothSidesWithoutBlamingTheBalance() {
      Judgement judgement = judge.judge(pair(flat(102), flat(101.75)));

      assertThat(judgement.reasons()).extracting(Reason::kind).containsOnly(ReasonKind.LEVEL);
      assertThat(judgement.reasons())
          .extracting(Reason::channel)
          .containsExactly(Channel.LEFT, Channel.RIGHT);
      assertThat(judgement.reasons()).allMatch(reason -> reason.alsoRegions().isEmpty());
    }
  }

  @Nested
  class Balance {
    @Test
    void foldsInTheRegionsThatItExplains() {
      Judgement judgement = judge.judge(pair(flat(100.75), flat(99)));

      assertThat(judgement.reasons())
          .containsExactly(
              new Reason(ReasonKind.BALANCE, null, null, null, 1.75, 1.0, List.of("bass", "mid")));
    }

    @Test
    void leavesAMatchFailureThatItDoesNotExplain() {
      Curve right = moved(flat(99), 10_000, -6);

      Judgement judgement = judge.judge(pair(flat(100.5), right));

      assertThat(judgement.reasons())
          .extracting(Reason::kind)
          .contains(ReasonKind.BALANCE, ReasonKind.MATCH);
      Reason match =
          judgement.reasons().stream()
              .filter(r -> r.kind() == ReasonKind.MATCH)
              .findFirst()
              .orElseThrow();
      assertThat(match.region()).isEqualTo("treble");
      assertThat(match.measuredDb()).isCloseTo(7.5, ROUNDING);
    }

    @Test
    void carriesTheSignOfTheLouderSide() {
      Reason reason = judge.judge(pair(flat(99.5), flat(100.75))).reasons().get(0);

      assertThat(reason.kind()).isEqualTo(ReasonKind.BALANCE);
      assertThat(reason.measuredDb()).isCloseTo(-1.25, ROUNDING);
      assertThat(reason.limitDb()).isEqualTo(-1.0);
    }
  }

  @Nested
  class Window {
    @Test
    void isLinearInLogFrequencyBetweenItsEnds() {
      // 10 kHz lies ln(10/6)/ln(16/6) = 0.52081 of the way: 3 + 3 · 0.52081 = 4.56243 dB, to 5
      // decimals
      Judgement judgement = judge.judge(pair(flat(100), moved(flat(100), 10_000, 5)));

      // the pair differs by 5 dB there too, and ranks first: 1.5 or so beyond 3.3 is more than 0.4
      // beyond 4.6
      assertThat(judgement.reasons())
          .extracting(Reason::kind)
          .containsExactly(ReasonKind.MATCH, ReasonKind.WINDOW);
      Reason window = judgement.reasons().get(1);
      assertThat(window.channel()).isEqualTo(Channel.RIGHT);
      assertThat(window.region()).isEqualTo("treble");
      assertThat(window.frequencyHz()).isCloseTo(10_000, within(1e-6));
      assertThat(window.measuredDb()).isCloseTo(5, ROUNDING);
      assertThat(window.limitDb()).isCloseTo(4.56243, within(5e-6));
    }

    @Test
    void holdsItsEdgesSoThatBothNeighboursJudge200Hz() {
      Judgement judgement =
          judge.judge(pair(moved(flat(100), 200, 2.5), moved(flat(100), 200, 2.5)));

      assertThat(judgement.reasons()).hasSize(4);
      assertThat(judgement.reasons()).extracting(Reason::region).containsOnly("bass", "mid");
      assertThat(judgement.reasons())
          .allMatch(reason -> reason.frequencyHz() == Grid.hz(Grid.nearest(200)));
    }

    @Test
    void passesAtItsLimitAndFailsBeyondIt() {
      // quarters are exact in binary, so that the limit is met exactly
      assertThat(judge.judge(pair(moved(flat(100), 100, 2), moved(flat(100), 100, 2))).verdict())
          .isEqualTo(Verdict.PASS);
      assertThat(
              judge.judge(pair(moved(flat(100), 100, 2.25), moved(flat(100), 100, 2.25))).verdict())
          .isEqualTo(Verdict.FAIL);
    }

    @Test
    void givesOneReasonForARegionAtItsWorstPoint() {
      Curve left = moved(moved(moved(flat(100), 50, 3), 60, -4), 70, 3.5);

      Judgement judgement = judge.judge(pair(left, left));

      assertThat(judgement.reasons()).hasSize(2);
      assertThat(judgement.reasons()).extracting(Reason::measuredDb).containsOnly(-4.0);
      assertThat(judgement.reasons()).extracting(Reason::limitDb).containsOnly(-2.0);
    }
  }

  @Nested
  class Order {
    @Test
    void putsAWindowInsideTheAlignmentBandBeforeAWorseOneOutside() {
      Curve both = moved(moved(flat(100), 1000, 1.75), 50, 8);

      List<Reason> reasons = judge.judge(pair(both, both)).reasons();

      assertThat(reasons).extracting(Reason::region).containsExactly("mid", "mid", "bass", "bass");
      assertThat(reasons).extracting(Reason::channel).startsWith(Channel.LEFT, Channel.RIGHT);
    }

    @Test
    void ranksTheRestByExcessOverHalfWidth() {
      // bass: 1.5 beyond ± 2 is 0.75; treble at 10 kHz: 2.5 beyond ± 4.56 is 0.55, though larger in
      // dB
      Curve both = moved(moved(flat(100), 50, 3.5), 10_000, 7.0625);

      List<Reason> reasons = judge.judge(pair(both, both)).reasons();

      assertThat(reasons)
          .extracting(Reason::region)
          .containsExactly("bass", "bass", "treble", "treble");
    }

    @Test
    void putsLevelBeforeWindows() {
      Curve left = moved(flat(97), 50, 20);

      assertThat(judge.judge(pair(left, flat(100))).reasons().get(0).kind())
          .isEqualTo(ReasonKind.LEVEL);
    }
  }

  @Nested
  class MissingData {
    @Test
    void makesARequiredRegionInvalidAndNamesTheFirstGap() {
      Judgement judgement = judge.judge(pair(without(flat(100), 12_000, 20_000), flat(100)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .containsExactly(
              new Reason(
                  ReasonKind.NO_DATA,
                  Channel.LEFT,
                  "treble",
                  Grid.hz(Grid.nearest(12_150)),
                  null,
                  null,
                  List.of()));
    }

    @Test
    void isReportedAsNotJudgedWhereTheRegionIsNotRequired() {
      Region optional =
          new Region(
              "treble",
              new Band(6000, 16_000),
              Span.constant(-3),
              Span.constant(3),
              Optional.of(Span.constant(2)),
              false);
      Judge lenient =
          Judges.forLimits(set(Smoothing.NONE, false, Pairs.BASS, Pairs.MID, optional), FLAT);

      Judgement judgement = lenient.judge(pair(without(flat(100), 15_000, 20_000), flat(100)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
      assertThat(judgement.results())
          .filteredOn(result -> !result.judged())
          .extracting(RegionResult::check, RegionResult::channel)
          .containsExactly(tuple(ReasonKind.MATCH, null), tuple(ReasonKind.WINDOW, Channel.LEFT));
    }

    @Test
    void inTheAlignmentBandIsInvalidAndLeavesNoLevel() {
      Judgement judgement = judge.judge(pair(flat(100), without(flat(100), 1000, 1000)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.rightLevelDb()).isNull();
      assertThat(judgement.leftLevelDb()).isZero();
      assertThat(judgement.reasons())
          .extracting(Reason::kind, Reason::region)
          .containsExactly(tuple(ReasonKind.NO_DATA, null), tuple(ReasonKind.NO_DATA, "mid"));
    }

    @Test
    void outsideEveryRegionCostsNothing() {
      Curve curve = without(flat(100), 17_000, 20_000);

      assertThat(judge.judge(pair(curve, curve)).verdict()).isEqualTo(Verdict.PASS);
    }
  }

  @Nested
  class SmoothingBeforeJudging {
    @Test
    void isAppliedToUnitAndGoldenAlike() {
      // a golden with a sharp notch: a unit that has the same notch deviates by nothing
      Curve notched = moved(flat(100), 1000, -13);
      Judge smoothing =
          Judges.forLimits(
              set(Smoothing.TWELFTH_OCTAVE, false, Pairs.BASS, Pairs.MID, Pairs.TREBLE),
              new GoldenResponse(notched, Optional.empty()));

      Judgement judgement = smoothing.judge(pair(notched, notched));

      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
      assertThat(judgement.results())
          .filteredOn(result -> result.check() == ReasonKind.WINDOW)
          .allMatch(result -> Math.abs(result.worstDb()) < 1e-9);
    }

    @Test
    void spreadsANarrowPeakOverItsNeighbours() {
      Judge smoothing =
          Judges.forLimits(
              set(Smoothing.TWELFTH_OCTAVE, false, Pairs.BASS, Pairs.MID, Pairs.TREBLE), FLAT);
      // power mean ½ 1 ½ of (1, 10^0.25, 1)/2: 10·lg((1 + 1.778279)/2) = 1.42746 dB, inside 1.5
      // though the point has 2.5
      Judgement judgement =
          smoothing.judge(pair(moved(flat(100), 4000, 2.5), moved(flat(100), 4000, 2.5)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
      assertThat(judgement.results())
          .anySatisfy(
              result -> {
                assertThat(result.check()).isEqualTo(ReasonKind.WINDOW);
                assertThat(result.region()).isEqualTo("mid");
                assertThat(result.worstDb()).isCloseTo(1.42746, within(5e-6));
              });
    }
  }

  @Nested
  class ChecksThatCannotBeMade {
    @Test
    void makeThePairInvalidAndNameThemselves() {
      LimitSet asked = asking(plain());

      Judgement judgement = Judges.forLimits(asked, FLAT).judge(pair(flat(100), flat(100)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .containsExactly(
              Reason.of(ReasonKind.UNCERTAINTY_MISSING, null, null, null),
              Reason.notJudged("distortion", Channel.LEFT, null),
              Reason.notJudged("distortion", Channel.RIGHT, null),
              Reason.notJudged("idle-noise", Channel.LEFT, null),
              Reason.notJudged("idle-noise", Channel.RIGHT, null));
    }

    private static LimitSet asking(LimitSet set) {
      LimitSet.DistortionLimit thd =
          new LimitSet.DistortionLimit(
              new Band(100, 3000),
              Optional.of(new LimitSet.Orders(2, 5)),
              OptionalDouble.of(1),
              OptionalDouble.empty());
      return new LimitSet(
          set.product(),
          set.tuning(),
          set.version(),
          set.earSimulator(),
          set.golden(),
          set.drive(),
          set.smoothing(),
          set.level(),
          set.regions(),
          List.of(thd),
          set.polaritySame(),
          OptionalDouble.of(20),
          set.signalToNoiseDb(),
          set.seating(),
          set.verificationDb(),
          new LimitSet.DecisionRule(true, 1, true));
    }
  }
}
