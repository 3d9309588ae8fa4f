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
import evenpair.tolerance.Verdict;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class CourseTests {
  private static final StoredLimitSet ONE = FixtureProducts.set("fern-1", "plain", EarSimulator.IEC_60318_4, 1, 180);
  private static final StoredLimitSet TWO = FixtureProducts.set("fern-1", "plain", EarSimulator.IEC_60318_4, 2, 180);

  private static StoredChannel channel(double offsetDb, double snrDb) {
    float[] snr = new float[Grid.POINTS];
    Arrays.fill(snr, (float) snrDb);
    Curve level = FixtureProducts.golden().level().plus(offsetDb);
    return new StoredChannel(level.toFloats(), new float[Grid.POINTS], snr, 0.35, 0.5);
  }

  private static StoredPair pair(double leftDb, double rightDb) {
    return new StoredPair(channel(leftDb, 60), channel(rightDb, 60));
  }

  private static Levelled levelled(StoredPair pair) {
    return new Levelled(Optional.of(pair), List.of());
  }

  private static Course course(StoredPair pair, StoredLimitSet limits) {
    return Course.of(levelled(pair), List.of(), 0, limits);
  }

  @Test
  void closesWithAVerdictWhenOneSeatingIsWanted() {
    assertThat(course(pair(0, 0), ONE).outcome()).isEqualTo(Outcome.PASS);
    Course failed = course(pair(0, 2), ONE);
    assertThat(failed.outcome()).isEqualTo(Outcome.FAIL);
    assertThat(failed.closing().orElseThrow().reasons()).isNotEmpty();
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
    Course inside = Course.of(levelled(pair(0, 0.2)), List.of(pair(0, 1.6)), 1, TWO);
    Course outside = Course.of(levelled(pair(0, 0.6)), List.of(pair(0, 1.6)), 1, TWO);
    assertThat(inside.outcome()).isEqualTo(Outcome.PASS);
    assertThat(outside.outcome()).isEqualTo(Outcome.FAIL);
  }

  @Test
  void keepsAnAttemptWithFlawsOutOfTheMean() {
    List<Reason> flaws = List.of(Reason.of(ReasonKind.CLIPPED, Channel.LEFT, null, null));
    Course course = Course.of(new Levelled(Optional.empty(), flaws), List.of(), 0, ONE);
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
      assertThat(course.flaws()).extracting(Reason::region).containsExactly("bass", "mid", "treble");
      assertThat(course.flaws()).extracting(Reason::channel).containsOnly(Channel.RIGHT);
    }

    @Test
    void isAllowedUpToTheLimitItself() {
      assertThat(course(new StoredPair(channel(0, 30), channel(0, 30)), ONE).outcome()).isEqualTo(Outcome.PASS);
    }

    @Test
    void isNotBlamedWhereTheResponseItselfIsMissing() {
      // 40 dB below golden with a ratio of 20 dB: at golden's level it would have been 60 dB.
      Course dead = course(new StoredPair(channel(0, 60), channel(-40, 20)), ONE);
      assertThat(dead.outcome()).isEqualTo(Outcome.FAIL);
    }
  }

  @Nested
  class Mounting {
    private final Judgement leak =
        new Judgement(
            Verdict.RESEAT,
            List.of(Reason.of(ReasonKind.LEAK, Channel.LEFT, null, null)),
            List.of(),
            null,
            null);
    private final StoredLimitSet leaking =
        new StoredLimitSet(ONE.id(), ONE.set(), ONE.goldenId(), ONE.golden(), ONE.digest(), (measured, uncertainty) -> leak);

    @Test
    void isTriedAgainWhileTriesAreLeft() {
      Course course = Course.of(levelled(pair(0, 0)), List.of(), 1, leaking);
      assertThat(course.outcome()).isEqualTo(Outcome.RESEAT);
      assertThat(course.closing()).isEmpty();
      assertThat(course.valid()).isFalse();
    }

    @Test
    void failsWithoutMarginsAfterTheLastTry() {
      Course course = Course.of(levelled(pair(0, 0)), List.of(), 2, leaking);
      assertThat(course.outcome()).isEqualTo(Outcome.FAIL);
      assertThat(course.valid()).as("its curves stay out of every statistic").isFalse();
      Judgement closing = course.closing().orElseThrow();
      assertThat(closing.reasons()).containsExactly(Reason.of(ReasonKind.SEAL, Channel.LEFT, null, null));
      assertThat(closing.results()).isEmpty();
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
        Combination.of(List.of(new StoredPair(a, a), new StoredPair(b, b))).left().phaseDeg().orElseThrow();
    // ±179° lie 2° apart around 180°; double rounding through sine and cosine stays below 1e-9°.
    assertThat(Math.abs(mean[100])).isCloseTo(180, within(1e-9));
  }

  @Test
  void leavesASingleSeatingAsItIsToTheBit() {
    StoredPair one = pair(0.123, -0.456);
    assertThat(Combination.of(List.of(one)).left().level().toFloats()).containsExactly(one.left().levelDb());
  }
}
