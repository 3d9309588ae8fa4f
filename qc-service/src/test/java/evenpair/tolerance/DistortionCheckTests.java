package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static evenpair.tolerance.Pairs.flat;
import static evenpair.tolerance.Pairs.moved;
import static evenpair.tolerance.Pairs.without;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.LimitSet.DistortionLimit;
import evenpair.tolerance.LimitSet.Orders;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class DistortionCheckTests {
  static final Curve FLOOR = flat(-80);
  static final Curve QUIET = flat(-75);

  static DistortionLimit thd(int lowest, int highest, double percent) {
    return new DistortionLimit(
        new Band(100, 3000),
        Optional.of(new Orders(lowest, highest)),
        OptionalDouble.of(percent),
        OptionalDouble.empty());
  }

  static DistortionLimit highOrder(double db) {
    return new DistortionLimit(
        new Band(100, 700), Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(db));
  }

  static MeasuredDistortion harmonics(Curve second, Curve third) {
    return harmonics(second, third, FLOOR);
  }

  static MeasuredDistortion harmonics(Curve second, Curve third, Curve floor) {
    return new MeasuredDistortion(
        List.of(second, third, QUIET, QUIET), Collections.nCopies(4, floor), QUIET, FLOOR);
  }

  static MeasuredDistortion buzzing(Curve highOrder, Curve floor) {
    return new MeasuredDistortion(
        Collections.nCopies(4, QUIET), Collections.nCopies(4, FLOOR), highOrder, floor);
  }

  static final MeasuredDistortion CLEAN = harmonics(QUIET, QUIET);

  static Judgement judge(DistortionLimit limit, MeasuredDistortion left, MeasuredDistortion right) {
    MeasuredPair pair = new MeasuredPair(channel(left), channel(right));
    return Judges.forLimits(Pairs.limiting(Pairs.plain(), limit), FLAT).judge(pair);
  }

  private static MeasuredChannel channel(MeasuredDistortion distortion) {
    return new MeasuredChannel(
        flat(100), Optional.empty(), Optional.ofNullable(distortion), Optional.empty());
  }

  static RegionResult row(Judgement judgement, ReasonKind check, Channel channel) {
    return judgement.results().stream()
        .filter(result -> result.check() == check && result.channel() == channel)
        .findFirst()
        .orElseThrow();
  }

  @Nested
  class TotalHarmonicDistortion {
    @Test
    void addsThePowersOfTheOrdersAskedInPercentOfTheFundamental() {
      // 3 % and 4 % at one point give √(3² + 4²) = 5 %
      Curve second = moved(flat(-200), 1000, 200 + 20 * Math.log10(0.03));
      Curve third = moved(flat(-200), 1000, 200 + 20 * Math.log10(0.04));

      Judgement judgement = judge(thd(2, 5, 4.5), harmonics(second, third), CLEAN);

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
      Reason reason = judgement.reasons().get(0);
      assertThat(judgement.reasons()).hasSize(1);
      assertThat(reason.kind()).isEqualTo(ReasonKind.THD);
      assertThat(reason.channel()).isEqualTo(Channel.LEFT);
      assertThat(reason.frequencyHz()).isEqualTo(1000);
      // rounding of double arithmetic only
      assertThat(reason.measuredDb()).isCloseTo(5, within(1e-9));
      assertThat(reason.limitDb()).isEqualTo(4.5);
    }

    @Test
    void leavesOutTheOrdersNotAsked() {
      Curve second = moved(flat(-200), 1000, 200 + 20 * Math.log10(0.03));
      Curve third = moved(flat(-200), 1000, 200 + 20 * Math.log10(0.04));

      RegionResult row =
          row(judge(thd(3, 5, 4.5), harmonics(second, third), CLEAN), ReasonKind.THD, Channel.LEFT);

      assertThat(row.state()).isEqualTo(CheckState.PASS);
      assertThat(row.worstDb()).isCloseTo(4, within(1e-9));
      assertThat(row.marginDb()).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void saysItsSpanAndUnit() {
      RegionResult row = row(judge(thd(2, 5, 1), CLEAN, CLEAN), ReasonKind.THD, Channel.RIGHT);

      assertThat(row.region()).isEqualTo("100–3000 Hz");
      assertThat(row.unit()).isEqualTo("%");
    }

    @Test
    void countsAnOrderWithin10DbOfItsFloorAsBelowIt() {
      MeasuredDistortion faint = harmonics(flat(-70.5), flat(-70.5));
      MeasuredDistortion seen = harmonics(flat(-69.5), flat(-69.5));

      Judgement judgement = judge(thd(2, 5, 1), faint, seen);

      assertThat(row(judgement, ReasonKind.THD, Channel.LEFT).worstDb()).isZero();
      assertThat(row(judgement, ReasonKind.THD, Channel.RIGHT).worstDb()).isGreaterThan(0);
    }

    @Test
    void isNotJudgedBesideItsSpan() {
      MeasuredDistortion outside = harmonics(moved(QUIET, 50, 70), QUIET);

      assertThat(judge(thd(2, 5, 1), outside, CLEAN).verdict()).isEqualTo(Verdict.PASS);
    }
  }

  @Nested
  class HighOrderDistortion {
    @Test
    void overItsLimitNamesFrequencyMeasuredAndLimit() {
      Judgement judgement = judge(highOrder(-50), buzzing(moved(QUIET, 250, 40), FLOOR), CLEAN);

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
      assertThat(judgement.reasons())
          .containsExactly(
              new Reason(
                  ReasonKind.HIGH_ORDER_DISTORTION,
                  Channel.LEFT,
                  "100–700 Hz",
                  Grid.hz(Grid.nearest(250)),
                  -35.0,
                  -50.0,
                  List.of()));
    }

    @Test
    void doesNotBlameACleanDriverAt55DbSignalToNoise() {
      // the floor of high orders at 55 dB signal-to-noise lies near −61 dB (simulated); what is
      // measured of a clean driver is that noise
      Judgement judgement =
          judge(
              highOrder(-50),
              buzzing(flat(-60), flat(-61)),
              buzzing(moved(flat(-61), 300, 5), flat(-61)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
    }
  }

  @Nested
  class TooNearTheNoise {
    @Test
    void aLimitWithin6DbOfTheFloorIsNotJudged() {
      // 1 % is −40 dB; four floors of −51.5 dB add up to −45.5 dB
      MeasuredDistortion noisy = harmonics(flat(-51), flat(-51), flat(-51.5));

      Judgement judgement = judge(thd(2, 5, 1), CLEAN, noisy);

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .extracting(Reason::kind, Reason::region, Reason::channel)
          .containsExactly(tuple(ReasonKind.NOT_JUDGED, "distortion-floor", Channel.RIGHT));
      assertThat(row(judgement, ReasonKind.THD, Channel.RIGHT).state())
          .isEqualTo(CheckState.NOT_JUDGED);
    }

    @Test
    void aLimitFartherFromTheFloorIsJudged() {
      // four floors of −52.1 dB add up to −46.1 dB, 6.1 below −40 dB
      MeasuredDistortion noisy = harmonics(flat(-52), flat(-52), flat(-52.1));

      assertThat(judge(thd(2, 5, 1), CLEAN, noisy).verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    void whatMayBeNoiseNeitherPassesNorFailsOverTheLimit() {
      // −39 dB is over 1 % (−40 dB), but less than 10 dB above its floor of −48 dB
      MeasuredDistortion unclear = harmonics(moved(QUIET, 200, 36), QUIET, moved(FLOOR, 200, 32));

      Judgement judgement = judge(thd(2, 2, 1), unclear, CLEAN);

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons().get(0).frequencyHz()).isEqualTo(Grid.hz(Grid.nearest(200)));
    }

    @Test
    void doesNotHideAPointThatIsOverTheLimit() {
      MeasuredDistortion noisyAndBad =
          harmonics(moved(QUIET, 1000, 50), QUIET, moved(FLOOR, 200, 50));

      Judgement judgement = judge(thd(2, 5, 1), noisyAndBad, CLEAN);

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
      assertThat(judgement.reasons()).extracting(Reason::kind).containsExactly(ReasonKind.THD);
    }
  }

  @Nested
  class WithoutData {
    @Test
    void aFinishedCurveIsInvalidAndSaysSo() {
      Judgement judgement = judge(thd(2, 5, 1), CLEAN, null);

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .containsExactly(Reason.notJudged("distortion", Channel.RIGHT, null));
      assertThat(row(judgement, ReasonKind.THD, Channel.RIGHT).judged()).isFalse();
      assertThat(row(judgement, ReasonKind.THD, Channel.LEFT).judged()).isTrue();
    }

    @Test
    void aMissingPointIsNotPassed() {
      MeasuredDistortion cut = harmonics(without(QUIET, 2500, 20_000), QUIET);

      assertThat(judge(thd(2, 5, 1), cut, CLEAN).verdict()).isEqualTo(Verdict.INVALID);
    }

    @Test
    void ordersThatAreNotMeasuredAreNotPassed() {
      assertThat(judge(thd(2, 6, 1), CLEAN, CLEAN).verdict()).isEqualTo(Verdict.INVALID);
    }
  }
}
