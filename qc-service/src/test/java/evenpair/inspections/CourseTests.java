package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.inspections.Levelling.Levelled;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class CourseTests {
  private static final StoredLimitSet ONE =
      FixtureProducts.set("fern-1", "plain", EarSimulator.IEC_60318_4, 1, 180);
  private static final StoredLimitSet TWO =
      FixtureProducts.set("fern-1", "plain", EarSimulator.IEC_60318_4, 2, 180);

  private static StoredChannel channel(double offsetDb, double snrDb) {
    float[] snr = new float[Grid.POINTS];
    Arrays.fill(snr, (float) snrDb);
    Curve level = FixtureProducts.golden().level().plus(offsetDb);
    return new StoredChannel(level.toFloats(), new float[Grid.POINTS], snr, 0.35, 0.5);
  }

  private static StoredChannel shaped(DoubleUnaryOperator deviationDb, DoubleUnaryOperator snrDb) {
    float[] level = FixtureProducts.golden().level().plus(Curve.from(deviationDb)).toFloats();
    return new StoredChannel(
        level, new float[Grid.POINTS], Curve.from(snrDb).toFloats(), 0.35, 0.5);
  }

  /** A second-order high-pass: what an opening beside the tip makes of a sealed response. */
  private static double leakDb(double hz) {
    return -10 * Math.log10(1 + Math.pow(60 / hz, 4));
  }

  private static StoredPair pair(double leftDb, double rightDb) {
    return new StoredPair(channel(leftDb, 60), channel(rightDb, 60));
  }

  private static Levelled levelled(StoredPair pair) {
    return new Levelled(Optional.of(pair), List.of());
  }

  private static Course course(StoredPair pair, StoredLimitSet limits) {
    return course(pair, Prior.NOTHING, limits);
  }

  private static Course course(StoredPair pair, Prior prior, StoredLimitSet limits) {
    return Course.of(levelled(pair), prior, new Judging(limits, Optional.empty(), List.of()));
  }

  private static Prior valid(StoredPair... seatings) {
    return new Prior(List.of(seatings), List.of());
  }

  @Test
  void closesWithAVerdictWhenOneSeatingIsWanted() {
    assertThat(course(pair(0, 0), ONE).outcome()).isEqualTo(Outcome.PASS);
    Course failed = course(pair(0, 2), ONE);
    assertThat(failed.outcome()).isEqualTo(Outcome.FAIL);
    assertThat(failed.closing().orElseThrow().judgement().reasons()).isNotEmpty();
    assertThat(failed.flaws()).as("why it failed stands in the verdict").isEmpty();
  }

  @Test
  void asksForAnotherSeatingEvenWhenTheFirstIsOutside() {
    Course first = course(pair(0, 1.6), TWO);
    assertThat(first.outcome()).isEqualTo(Outcome.VALID);
    assertThat(first.valid()).isTrue();
    assertThat(first.closing()).isEmpty();
  }

  @Test
  void judgesTheMeanAndNotTheBestOrLastSeating() {
    // Balance may be 1 dB: seatings of 1.6 and 0.2 average to 0.9, of 1.6 and 0.6 to 1.1.
    Course inside = course(pair(0, 0.2), valid(pair(0, 1.6)), TWO);
    Course outside = course(pair(0, 0.6), valid(pair(0, 1.6)), TWO);
    assertThat(inside.outcome()).isEqualTo(Outcome.PASS);
    assertThat(outside.outcome()).isEqualTo(Outcome.FAIL);
  }

  @Test
  void keepsAnAttemptWithFlawsOutOfTheMean() {
    List<Reason> flaws = List.of(Reason.of(ReasonKind.CLIPPED, Channel.LEFT, null, null));
    Course course =
        Course.of(
            Levelled.refused(flaws), Prior.NOTHING, new Judging(ONE, Optional.empty(), List.of()));
    assertThat(course.outcome()).isEqualTo(Outcome.INVALID);
    assertThat(course.valid()).isFalse();
    assertThat(course.flaws()).isEqualTo(flaws);
  }

  @Nested
  class Noise {
    @Test
    void isNamedByRegionAndChannel() {
      StoredPair noisy = new StoredPair(channel(0, 60), channel(0, 29.5));
      Course course = course(noisy, ONE);
      assertThat(course.outcome()).isEqualTo(Outcome.INVALID);
      assertThat(course.flaws())
          .extracting(Reason::region)
          .containsExactly("bass", "mid", "treble");
      assertThat(course.flaws()).extracting(Reason::channel).containsOnly(Channel.RIGHT);
    }

    @Test
    void isAllowedUpToTheLimitItself() {
      assertThat(course(new StoredPair(channel(0, 30), channel(0, 30)), ONE).outcome())
          .isEqualTo(Outcome.PASS);
    }

    @Test
    void isNotBlamedWhereTheResponseItselfIsMissing() {
      // Above 3 kHz 35 dB below golden, 20 dB above the noise; at golden's level that would be 55
      // dB. Below, 60 dB.
      StoredChannel dead = shaped(hz -> hz > 3000 ? -35 : 0, hz -> hz > 3000 ? 20 : 60);
      assertThat(course(new StoredPair(channel(0, 60), dead), ONE).outcome())
          .isEqualTo(Outcome.FAIL);
    }
  }

  @Nested
  class Seating {
    private final StoredChannel leaking = shaped(CourseTests::leakDb, hz -> 60);

    private final StoredPair leak = new StoredPair(leaking, channel(0, 60));

    private Prior after(Course... courses) {
      return new Prior(List.of(), Stream.of(courses).map(Course::flaws).toList());
    }

    @Test
    void isAskedForAgainBeforeAnythingElseIsSaid() {
      Course first = course(leak, ONE);
      assertThat(first.outcome()).isEqualTo(Outcome.RESEAT);
      assertThat(first.flaws()).extracting(Reason::kind).containsExactly(ReasonKind.LEAK);
      assertThat(first.flaws()).extracting(Reason::channel).containsExactly(Channel.LEFT);
      assertThat(first.valid()).isFalse();
      assertThat(first.closing()).isEmpty();

      StoredPair noisyToo = new StoredPair(shaped(CourseTests::leakDb, hz -> 10), channel(0, 60));
      assertThat(course(noisyToo, ONE).outcome())
          .as("a leak is not a noisy room")
          .isEqualTo(Outcome.RESEAT);
    }

    @Test
    void knowsThatTheSameLossCameBefore() {
      Course first = course(leak, ONE);
      Course second = course(leak, after(first), ONE);
      assertThat(first.flaws().get(0).repeats()).isFalse();
      assertThat(second.flaws().get(0).repeats()).isTrue();
    }

    @Test
    void failsWithoutMarginsWhenEveryTryLeakedOnTheSameEarpiece() {
      Course first = course(leak, ONE);
      Course second = course(leak, after(first), ONE);
      Course third = course(leak, after(first, second), ONE);
      assertThat(second.outcome()).isEqualTo(Outcome.RESEAT);
      assertThat(third.outcome()).isEqualTo(Outcome.FAIL);
      assertThat(third.valid()).as("its curves stay out of every statistic").isFalse();
      Judgement closing = third.closing().orElseThrow().judgement();
      assertThat(closing.reasons()).extracting(Reason::kind).containsExactly(ReasonKind.SEAL);
      assertThat(closing.reasons()).extracting(Reason::channel).containsExactly(Channel.LEFT);
      assertThat(closing.results()).isEmpty();
    }

    @Test
    void isNotTheUnitsFaultWhenTheEarpieceThatLeaksChanges() {
      Course left = course(leak, ONE);
      Course right = course(new StoredPair(channel(0, 60), leaking), after(left), ONE);
      Course again = course(leak, after(left, right), ONE);
      assertThat(again.outcome()).isEqualTo(Outcome.RESEAT);
      assertThat(course(pair(0, 0), after(left, right, again), ONE).outcome())
          .isEqualTo(Outcome.PASS);
    }

    @Test
    void isJudgedOnTheValidOnesOnlyWhenMoreAreWanted() {
      Course first = course(pair(0, 0.5), TWO);
      Course bad = course(leak, valid(pair(0, 0.5)), TWO);
      Prior prior = new Prior(List.of(pair(0, 0.5)), List.of(bad.flaws()));
      Course last = course(pair(0, 0.7), prior, TWO);
      assertThat(first.outcome()).isEqualTo(Outcome.VALID);
      assertThat(bad.outcome()).isEqualTo(Outcome.RESEAT);
      assertThat(last.outcome()).isEqualTo(Outcome.PASS);
      assertThat(last.closing().orElseThrow().seatings()).hasSize(2);
      // The mean of 0.5 and 0.7 dB; floats at 100 dB are exact to 8e-6 dB.
      Judgement judgement = last.closing().orElseThrow().judgement();
      assertThat(judgement.rightLevelDb()).isCloseTo(0.6, within(2e-5));
    }
  }

  @Test
  void combinesPhasesAsDirectionsSoThatPlusAndMinus180AreNeighbours() {
    float[] plus = new float[Grid.POINTS];
    float[] minus = new float[Grid.POINTS];
    Arrays.fill(plus, 179);
    Arrays.fill(minus, -179);
    StoredChannel a = new StoredChannel(channel(0, 60).levelDb(), plus, null, null, null);
    StoredChannel b = new StoredChannel(channel(0, 60).levelDb(), minus, null, null, null);
    double[] mean =
        Combination.of(List.of(new StoredPair(a, a), new StoredPair(b, b)))
            .left()
            .phaseDeg()
            .orElseThrow();
    // ±179° lie 2° apart around 180°; double rounding through sine and cosine stays below 1e-9°.
    assertThat(Math.abs(mean[100])).isCloseTo(180, within(1e-9));
  }

  @Test
  void leavesASingleSeatingAsItIsToTheBit() {
    StoredPair one = pair(0.123, -0.456);
    assertThat(Combination.of(List.of(one)).left().level().toFloats())
        .containsExactly(one.left().levelDb());
  }
}
