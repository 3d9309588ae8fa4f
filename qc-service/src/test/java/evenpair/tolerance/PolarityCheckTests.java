package evenpair.tolerance;

import static evenpair.tolerance.Pairs.flat;
import static evenpair.tolerance.Pairs.moved;
import static evenpair.tolerance.Pairs.set;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.LimitSet.PolarityRule;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PolarityCheckTests {
  static final GoldenResponse WITH_PHASE = new GoldenResponse(flat(100), Optional.of(phase(0)));
  final Judge againstGolden = judge(WITH_PHASE);
  final Judge leftAgainstRight = judge(Pairs.FLAT);

  private static Judge judge(GoldenResponse golden) {
    return Judges.forLimits(set(Smoothing.NONE, true, Pairs.BASS, Pairs.MID, Pairs.TREBLE), golden);
  }

  private static double[] phase(double degrees) {
    double[] phase = new double[Grid.POINTS];
    Arrays.fill(phase, degrees);
    return phase;
  }

  private static MeasuredChannel channel(Curve level, double degrees) {
    return new MeasuredChannel(level, Optional.of(phase(degrees)));
  }

  @Test
  void passesBothSidesTheRightWayRound() {
    Judgement judgement =
        againstGolden.judge(new MeasuredPair(channel(flat(100), 0), channel(flat(100), 0)));

    assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
    assertThat(judgement.results())
        .filteredOn(r -> r.check() == ReasonKind.POLARITY)
        .hasSize(2)
        .allMatch(RegionResult::judged);
  }

  @Test
  void namesTheReversedEarpieceFirst() {
    Judgement judgement =
        againstGolden.judge(new MeasuredPair(channel(flat(96), 0), channel(flat(100), 180)));

    assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
    assertThat(judgement.reasons().get(0))
        .isEqualTo(Reason.of(ReasonKind.POLARITY, Channel.RIGHT, null, null));
    assertThat(judgement.reasons().get(1).kind()).isEqualTo(ReasonKind.LEVEL);
  }

  @Test
  void seesBothReversedAgainstTheGoldenPhase() {
    Judgement judgement =
        againstGolden.judge(new MeasuredPair(channel(flat(100), 180), channel(flat(100), 180)));

    assertThat(judgement.reasons())
        .extracting(Reason::channel)
        .containsExactly(Channel.LEFT, Channel.RIGHT);
  }

  @Test
  void comparesLeftWithRightWithoutGoldenPhase() {
    Judgement judgement =
        leftAgainstRight.judge(new MeasuredPair(channel(flat(100), 0), channel(flat(100), 180)));

    assertThat(judgement.reasons())
        .containsExactly(Reason.of(ReasonKind.POLARITY, null, null, null));
  }

  @Test
  void neverPassesAPairWhosePhaseIsUnknown() {
    Judgement judgement = againstGolden.judge(Pairs.pair(flat(100), flat(100)));

    assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
    assertThat(judgement.reasons()).containsExactly(Reason.notJudged("polarity"));
  }

  @Test
  void takesAPhaseWithAGapInTheBandAsUnknown() {
    double[] gap = phase(0);
    gap[Grid.nearest(500)] = Double.NaN;
    MeasuredChannel left = new MeasuredChannel(flat(100), Optional.of(gap));

    Judgement judgement = againstGolden.judge(new MeasuredPair(left, channel(flat(100), 0)));

    assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
  }

  @Test
  void stillFailsAnUndecidedPairByItsOtherChecks() {
    // a dead driver's phase is noise: |r| of 81 random phases over the lags stays below 0.5 for
    // this seed
    Random random = new Random(7);
    double[] noise = random.doubles(Grid.POINTS, -180, 180).toArray();
    MeasuredChannel dead = new MeasuredChannel(moved(flat(60), 1000, 0), Optional.of(noise));

    Judgement judgement = againstGolden.judge(new MeasuredPair(dead, channel(flat(100), 0)));

    assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
    assertThat(judgement.reasons().get(0).kind()).isEqualTo(ReasonKind.LEVEL);
    assertThat(judgement.results())
        .filteredOn(r -> r.check() == ReasonKind.POLARITY)
        .extracting(RegionResult::judged)
        .containsExactly(false, true);
  }

  @Nested
  class WhereItIsNotRequired {
    final Judge judge =
        Judges.forLimits(ruled(new PolarityRule(true, false, List.of())), WITH_PHASE);

    @Test
    void passesAPairOfCurvesWithoutPhaseAndSaysThatItWasNotJudged() {
      Judgement judgement = judge.judge(Pairs.pair(flat(100), flat(100)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
      assertThat(judgement.reasons()).isEmpty();
      assertThat(judgement.results())
          .filteredOn(r -> r.check() == ReasonKind.POLARITY)
          .hasSize(2)
          .noneMatch(RegionResult::judged);
    }

    @Test
    void stillFailsAReversedEarpiece() {
      Judgement judgement =
          judge.judge(new MeasuredPair(channel(flat(100), 180), channel(flat(100), 0)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
    }
  }

  @Nested
  class AFurtherBand {
    final Judge judge =
        Judges.forLimits(
            ruled(new PolarityRule(true, true, List.of(new Band(30, 120)))), WITH_PHASE);

    /** Reversed below 150 Hz only, as behind a crossover there. */
    private MeasuredChannel lowDriverReversed() {
      double[] phase = phase(0);
      Arrays.fill(phase, 0, Grid.nearest(150), 180);
      return new MeasuredChannel(flat(100), Optional.of(phase));
    }

    @Test
    void tellsADriverThatIsReversedAlone() {
      Judgement judgement =
          judge.judge(new MeasuredPair(channel(flat(100), 0), lowDriverReversed()));

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
      assertThat(judgement.reasons())
          .extracting(Reason::kind, Reason::channel, Reason::region)
          .containsExactly(tuple(ReasonKind.POLARITY_BAND, Channel.RIGHT, "30–120 Hz"));
    }

    @Test
    void isNotSeenByASetThatDoesNotNameIt() {
      Judgement judgement =
          againstGolden.judge(new MeasuredPair(channel(flat(100), 0), lowDriverReversed()));

      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
    }

    @Test
    void addsNothingToASideThatIsReversedAsAWhole() {
      Judgement judgement =
          judge.judge(new MeasuredPair(channel(flat(100), 0), channel(flat(100), 180)));

      assertThat(judgement.reasons()).extracting(Reason::kind).containsExactly(ReasonKind.POLARITY);
    }

    @Test
    void blocksAPassWhereItsPhaseIsUnknown() {
      double[] gap = phase(0);
      gap[Grid.nearest(50)] = Double.NaN;
      MeasuredChannel left = new MeasuredChannel(flat(100), Optional.of(gap));

      Judgement judgement = judge.judge(new MeasuredPair(left, channel(flat(100), 0)));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
    }
  }

  private static LimitSet ruled(PolarityRule rule) {
    LimitSet set = set(Smoothing.NONE, true, Pairs.BASS, Pairs.MID, Pairs.TREBLE);
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
        set.distortion(),
        rule,
        set.idleNoiseDba(),
        set.signalToNoiseDb(),
        set.seating(),
        set.verificationDb(),
        set.decision());
  }
}
