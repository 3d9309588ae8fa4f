package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.Uncertainty;
import evenpair.tolerance.Verdict;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class JudgingTests {
  private static final StoredLimitSet PLAIN = new FixtureSet("gorse-1", "plain").stored();
  private static final DoubleUnaryOperator TILT_DB = hz -> hz < 300 ? 8 : 0;
  private static final StoredLimitSet WARM =
      new FixtureSet("gorse-1", "warm")
          .golden(
              new GoldenResponse(
                  PLAIN.golden().level().plus(Curve.from(TILT_DB)), Optional.empty()))
          .stored();

  private static StoredPair pair(DoubleUnaryOperator leftDb, DoubleUnaryOperator rightDb) {
    return new StoredPair(channel(leftDb), channel(rightDb));
  }

  private static StoredChannel channel(DoubleUnaryOperator deviationDb) {
    float[] level = PLAIN.golden().level().plus(Curve.from(deviationDb)).toFloats();
    return new StoredChannel(level, new float[Grid.POINTS], null, null, null);
  }

  @Test
  void saysFirstWhichOtherTuningAFailedPairSoundsLike() {
    Judging judging = new Judging(PLAIN, Optional.empty(), List.of(WARM));
    Judgement judgement = judging.judge(List.of(pair(TILT_DB, TILT_DB)));
    assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
    assertThat(judgement.reasons()).extracting(Reason::kind).startsWith(ReasonKind.OTHER_TUNING);
    assertThat(judgement.reasons().get(0).otherTuning()).isEqualTo("warm");
    assertThat(judgement.results()).as("the margins stay").isNotEmpty();
  }

  @Test
  void doesNotTakeABadBassForATuningThatNobodyMakes() {
    Judgement alone =
        new Judging(PLAIN, Optional.empty(), List.of()).judge(List.of(pair(TILT_DB, TILT_DB)));
    assertThat(alone.reasons()).extracting(Reason::kind).doesNotContain(ReasonKind.OTHER_TUNING);
    Judgement right =
        new Judging(PLAIN, Optional.empty(), List.of(WARM)).judge(List.of(pair(hz -> 0, hz -> 0)));
    assertThat(right.verdict()).isEqualTo(Verdict.PASS);
  }

  @Nested
  class WhatIsStoredOfAnUncertainty {
    private final Uncertainty measured =
        new Uncertainty(Curve.from(hz -> 0.1), Curve.from(hz -> 0.3), 0.2, 0.25);

    @Test
    void isWhatWasUsed() {
      UsedUncertainty used = UsedUncertainty.of(UUID.randomUUID(), measured);
      // 0.1 as a 32-bit float, not as a double: what the column holds.
      assertThat(used.toUncertainty().levelDb().at(100)).isEqualTo((double) 0.1f);
      assertThat(used.toUncertainty().offsetDb()).isEqualTo(0.2);
    }

    @Test
    void ofTwoStationsIsTheLargerAtEachPointAndAbsentWhereOneIs() {
      UUID first = new UUID(0, 1);
      UUID second = new UUID(0, 2);
      float[] falling = Curve.from(hz -> hz < 1000 ? 0.4 : 0.05).toFloats();
      falling[240] = Float.NaN;
      UsedUncertainty other = new UsedUncertainty(List.of(second), falling, falling, 0.1, 0.5);
      UsedUncertainty both = UsedUncertainty.of(first, measured).larger(other);
      assertThat(both.studies()).containsExactly(first, second);
      assertThat(both.levelDb()[0]).isEqualTo(0.4f);
      assertThat(both.levelDb()[200]).isEqualTo(0.1f);
      assertThat(both.levelDb()[240]).isNaN();
      assertThat(both.offsetDb()).isEqualTo(0.2);
      assertThat(both.balanceDb()).isEqualTo(0.5);
    }
  }

  @Nested
  class SeveralSeatings {
    @Test
    void areSpreadByTheirWidestPointInEachRegion() {
      StoredPair first = pair(hz -> 0, hz -> 0);
      StoredPair second = pair(hz -> hz < 150 ? 0.6 : 0, hz -> -0.2);
      List<Spread> spreads = Spread.of(List.of(first, second), PLAIN.set());
      assertThat(spreads).hasSize(6);
      Spread bass = spreads.get(0);
      assertThat(bass.region()).isEqualTo("bass");
      // Stored as 32-bit floats, steps of 7.6e-6 dB at 100 dB.
      assertThat(bass.db()).isCloseTo(0.6, within(3e-5));
      assertThat(bass.atHz()).isLessThan(150);
      assertThat(spreads.get(5).db()).as("right, treble").isCloseTo(0.2, within(3e-5));
      assertThat(Spread.of(List.of(first), PLAIN.set())).as("one seating has no spread").isEmpty();
    }

    @Test
    void combineDistortionAndIdleNoiseAsTheMeanInDb() {
      StoredChannel a = measured(-40, 30, 12.0);
      StoredChannel b = measured(-44, 33, 14.0);
      var mean = Combination.of(List.of(new StoredPair(a, a), new StoredPair(b, b))).left();
      assertThat(mean.distortion().orElseThrow().harmonicsDb().get(3).at(100)).isEqualTo(-42);
      assertThat(mean.idleNoise().orElseThrow().dba()).isEqualTo(31.5);
      assertThat(mean.idleNoise().orElseThrow().floorDba()).as("the worse floor").isEqualTo(14);
      StoredChannel curve = channel(hz -> 0);
      assertThat(
              Combination.of(List.of(new StoredPair(a, a), new StoredPair(curve, curve)))
                  .left()
                  .distortion())
          .as("a finished curve holds none")
          .isEmpty();
    }

    private StoredChannel measured(float harmonicsDb, double dba, Double floorDba) {
      StoredChannel plain = channel(hz -> 0);
      float[] harmonics = new float[4 * Grid.POINTS];
      Arrays.fill(harmonics, harmonicsDb);
      float[] high = new float[Grid.POINTS];
      return new StoredChannel(
          plain.levelDb(),
          plain.phaseDeg(),
          null,
          null,
          null,
          new StoredDistortion(harmonics, harmonics, high, high),
          new StoredIdle(dba, floorDba, List.of()));
    }
  }
}
