package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static evenpair.tolerance.Pairs.pair;
import static evenpair.tolerance.Pairs.randomPair;
import static evenpair.tolerance.Pairs.set;
import static evenpair.tolerance.Pairs.swapped;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What must hold for any pair, tried on seeded random ones. */
class JudgePropertyTests {
  static final LimitSet SET =
      set(Smoothing.TWELFTH_OCTAVE, false, Pairs.BASS, Pairs.MID, Pairs.TREBLE);
  final Judge judge = Judges.forLimits(SET, FLAT);

  static LongStream seeds() {
    return LongStream.range(0, 200);
  }

  @Test
  void theRandomPairsPassAndFailInNumbers() {
    long passed =
        seeds().filter(seed -> judge.judge(randomPair(seed)).verdict() == Verdict.PASS).count();

    assertThat(passed)
        .as("properties shown on one verdict only would show little")
        .isBetween(20L, 180L);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void failsExactlyIfAMarginIsNegative(long seed) {
    Judgement judgement = judge.judge(randomPair(seed));

    boolean outside = judgement.results().stream().anyMatch(result -> result.marginDb() < 0);
    assertThat(judgement.verdict()).isEqualTo(outside ? Verdict.FAIL : Verdict.PASS);
    assertThat(judgement.reasons().isEmpty()).isEqualTo(!outside);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void givesOneReasonACheckRegionAndChannel(long seed) {
    List<Reason> reasons = judge.judge(randomPair(seed)).reasons();

    assertThat(
            reasons.stream()
                .map(r -> List.of(r.kind(), r.region() + "", r.channel() + ""))
                .distinct())
        .hasSize(reasons.size());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void swapsReasonsWithTheChannels(long seed) {
    MeasuredPair pair = randomPair(seed);

    Judgement straight = judge.judge(pair);
    Judgement swapped = judge.judge(swapped(pair));

    assertThat(swapped.verdict()).isEqualTo(straight.verdict());
    assertThat(swapped.leftLevelDb()).isEqualTo(straight.rightLevelDb());
    assertThat(swapped.reasons())
        .containsExactlyInAnyOrderElementsOf(
            straight.reasons().stream().map(JudgePropertyTests::mirrored).toList());
  }

  private static Reason mirrored(Reason reason) {
    boolean signed = reason.kind() == ReasonKind.BALANCE || reason.kind() == ReasonKind.MATCH;
    return new Reason(
        reason.kind(),
        reason.channel() == null ? null : reason.channel().other(),
        reason.region(),
        reason.frequencyHz(),
        signed ? Double.valueOf(-reason.measuredDb()) : reason.measuredDb(),
        signed ? Double.valueOf(-reason.limitDb()) : reason.limitDb(),
        reason.alsoRegions());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void keepsWindowsAndMatchWhenBothChannelsShiftAlike(long seed) {
    MeasuredPair pair = randomPair(seed);
    double shift = new Random(seed).nextDouble() - 0.5;

    List<RegionResult> before = judge.judge(pair).results();
    List<RegionResult> after = judge.judge(shifted(pair, shift)).results();

    for (int i = 0; i < before.size(); i++) {
      // levels near 100 dB through a power mean and back: rounding stays below 1e-9 dB
      double moved = before.get(i).check() == ReasonKind.LEVEL ? shift : 0;
      assertThat(after.get(i).worstDb()).isCloseTo(before.get(i).worstDb() + moved, within(1e-9));
    }
  }

  private static MeasuredPair shifted(MeasuredPair pair, double db) {
    return pair(pair.left().level().plus(db), pair.right().level().plus(db));
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void neverTurnsPassToFailWhenALimitWidens(long seed) {
    MeasuredPair pair = randomPair(seed);
    Judgement narrow = judge.judge(pair);

    for (LimitSet wider : widened(new Random(seed))) {
      Judgement judgement = Judges.forLimits(wider, FLAT).judge(pair);
      if (narrow.verdict() == Verdict.PASS) {
        assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
      }
      for (int i = 0; i < narrow.results().size(); i++) {
        assertThat(judgement.results().get(i).marginDb())
            .isGreaterThanOrEqualTo(narrow.results().get(i).marginDb());
      }
    }
  }

  private static List<LimitSet> widened(Random random) {
    double by = 2 * random.nextDouble();
    Region mid = Pairs.MID;
    return Stream.of(
            new Region("mid", mid.band(), Span.constant(-1.5 - by), mid.upper(), mid.match(), true),
            new Region("mid", mid.band(), mid.lower(), new Span(1.5 + by, 1.5), mid.match(), true),
            new Region(
                "mid",
                mid.band(),
                mid.lower(),
                mid.upper(),
                Optional.of(Span.constant(1 + by)),
                true))
        .map(wider -> set(Smoothing.TWELFTH_OCTAVE, false, Pairs.BASS, wider, Pairs.TREBLE))
        .toList();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void scalesMarginsWithDeviationsAndLimits(long seed) {
    // unsmoothed, since smoothing is not linear in dB; a factor of 2 is exact in binary
    MeasuredPair pair = randomPair(seed);
    Judge once = Judges.forLimits(Pairs.plain(), FLAT);
    Judge twice = Judges.forLimits(doubled(), FLAT);

    Judgement small = once.judge(pair);
    Judgement large =
        twice.judge(pair(stretched(pair.left().level()), stretched(pair.right().level())));

    for (int i = 0; i < small.results().size(); i++) {
      // the stretched curve is rounded near 100 dB: 1e-12 is ample for that, and 1e-9 for the sums
      // after it
      assertThat(large.results().get(i).marginDb())
          .isCloseTo(2 * small.results().get(i).marginDb(), within(1e-9));
    }
    assertThat(large.verdict()).isEqualTo(small.verdict());
  }

  private static Curve stretched(Curve curve) {
    return curve.minus(FLAT.level()).times(2).plus(FLAT.level());
  }

  private static LimitSet doubled() {
    LimitSet set = Pairs.plain();
    LimitSet.LevelLimit level = new LimitSet.LevelLimit(set.level().band(), -3, 3, 2);
    List<Region> regions =
        set.regions().stream()
            .map(
                r ->
                    new Region(
                        r.name(),
                        r.band(),
                        twice(r.lower()),
                        twice(r.upper()),
                        r.match().map(JudgePropertyTests::twice),
                        true))
            .toList();
    return new LimitSet(
        set.product(),
        set.tuning(),
        set.version(),
        set.earSimulator(),
        set.golden(),
        set.drive(),
        set.smoothing(),
        level,
        regions,
        set.distortion(),
        set.polaritySame(),
        set.idleNoiseDba(),
        set.signalToNoiseDb(),
        set.seating(),
        set.verificationDb(),
        set.decision());
  }

  private static Span twice(Span span) {
    return new Span(2 * span.start(), 2 * span.end());
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void givesNoVerdictOnACurveWithAHoleInARegion(long seed) {
    MeasuredPair pair = randomPair(seed);
    double[] holed = pair.left().level().toArray();
    int hole = new Random(seed).nextInt(Grid.nearest(16_000) + 1);
    holed[hole] = Double.NaN;

    Judgement judgement = judge.judge(pair(Curve.of(holed), pair.right().level()));

    assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
    assertThat(judgement.reasons()).allMatch(reason -> reason.kind() == ReasonKind.NO_DATA);
    assertThat(judgement.results())
        .allMatch(r -> r.judged() ? Double.isFinite(r.marginDb()) : r.marginDb() == null);
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void givesTheSameJudgementAgain(long seed) {
    assertThat(judge.judge(randomPair(seed)))
        .isEqualTo(Judges.forLimits(SET, FLAT).judge(randomPair(seed)));
  }
}
