package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static evenpair.tolerance.Pairs.pair;
import static evenpair.tolerance.Pairs.region;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.FlatJudge.Outcome;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** The flat arrays against the judge itself, over random sets and random pairs. */
class FlatJudgeTests {
  private static final int PAIRS = 300;

  static LongStream seeds() {
    return LongStream.range(0, 60);
  }

  /** Everything that one random trial needs. */
  private record Trial(LimitSet set, List<Optional<Uncertainty>> worth, List<MeasuredPair> pairs) {
    int group(int row) {
      return row % worth.size();
    }

    PairTable table() {
      PairTable table = new PairTable(set, FLAT);
      for (int row = 0; row < pairs.size(); row++) {
        MeasuredPair pair = pairs.get(row);
        table.add(group(row), pair.left().level(), pair.right().level());
      }
      return table;
    }

    Judgement judged(int row) {
      return Judges.forLimits(set, FLAT).judge(pairs.get(row), worth.get(group(row)));
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void comeToTheJudgesVerdictOnEveryPair(long seed) {
    Trial trial = trial(seed);

    Outcome outcome = outcome(trial);

    for (int row = 0; row < PAIRS; row++) {
      if (outcome.state[row] == Outcome.NEAR) {
        continue;
      }
      Judgement judgement = trial.judged(row);
      assertThat(verdict(outcome.state[row])).as("row %d", row).isEqualTo(judgement.verdict());
      if (judgement.verdict() == Verdict.PASS) {
        assertThat(outcome.conditional[row]).isEqualTo(judgement.conditional());
      }
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void countTheFailuresOfEachCheckAsTheJudgeDoes(long seed) {
    Trial trial = trial(seed);
    FlatJudge flat = new FlatJudge(trial.set(), FLAT, trial.worth());

    Outcome outcome = flat.judge(trial.table());

    int[] expected = new int[flat.checks().size()];
    for (int row = 0; row < PAIRS; row++) {
      if (outcome.state[row] <= Outcome.FAIL) {
        List<Integer> failing = failing(trial, flat, row);
        failing.forEach(check -> expected[check]++);
        assertThat(outcome.failing[row]).isEqualTo((short) failing.size());
        assertThat((int) outcome.sole[row])
            .isEqualTo(failing.size() == 1 ? failing.get(0) : Outcome.NONE);
      }
    }
    assertThat(outcome.failures).isEqualTo(expected);
  }

  private static List<Integer> failing(Trial trial, FlatJudge flat, int row) {
    Guard guard = new Guard(trial.set().decision(), trial.worth().get(trial.group(row)));
    return trial.judged(row).results().stream()
        .filter(result -> guard.rejects(result.state()))
        .map(
            result ->
                IntStream.range(0, flat.checks().size())
                    .filter(i -> flat.checks().get(i).is(result))
                    .findFirst()
                    .orElseThrow())
        .toList();
  }

  @Test
  void leaveHardlyAPairToTheJudge() {
    // A margin falls within ±1e-4 dB of 0 with a chance of some 1e-4 a check at densities below
    // 1 a dB: of 18 000 pairs with up to 9 checks a handful, never one in a hundred.
    long near =
        seeds()
            .mapToObj(FlatJudgeTests::trial)
            .map(FlatJudgeTests::outcome)
            .flatMapToInt(o -> IntStream.range(0, PAIRS).map(row -> o.state[row]))
            .filter(state -> state == Outcome.NEAR)
            .count();

    assertThat(near).isLessThan(180);
  }

  @Test
  void meetEveryState() {
    // otherwise the comparisons above would show little
    List<Byte> states =
        seeds()
            .mapToObj(FlatJudgeTests::trial)
            .map(FlatJudgeTests::outcome)
            .flatMap(o -> IntStream.range(0, PAIRS).mapToObj(row -> o.state[row]))
            .distinct()
            .toList();

    assertThat(states).contains(Outcome.PASS, Outcome.FAIL, Outcome.NO_DATA, Outcome.UNDECIDABLE);
  }

  @Nested
  class TooNear {
    @Test
    void aPairOnItsLimitIsHandedBack() {
      LimitSet set = Pairs.plain();
      PairTable table = new PairTable(set, FLAT);
      Curve edge = Pairs.moved(Pairs.flat(100), 1000, 1.5);
      table.add(0, edge, edge);

      Outcome outcome = new FlatJudge(set, FLAT, List.of(Optional.empty())).judge(table);

      assertThat(outcome.state[0]).isEqualTo(Outcome.NEAR);
      assertThat(outcome.failures).containsOnly(0);
    }
  }

  @Nested
  class CriticalScale {
    @ParameterizedTest
    @MethodSource("evenpair.tolerance.FlatJudgeTests#seeds")
    void isWhereWindowsAndMatchBeginToFail(long seed) {
      Trial trial = trial(seed);
      float[] scales = new FlatJudge(trial.set(), FLAT, trial.worth()).criticalScale(trial.table());

      for (int row = 0; row < 40; row++) {
        float scale = scales[row];
        if (!(scale > 0.05 && scale < 20)) {
          continue; // not judged, or beyond what a limit may be
        }
        // A hundredth of a percent aside: scales are 32-bit quotients, right to 1e-6 of themselves.
        assertThat(failsByCurves(trial, row, scale * 1.0001)).as("wider, row %d", row).isFalse();
        assertThat(failsByCurves(trial, row, scale * 0.9999)).as("tighter, row %d", row).isTrue();
      }
    }

    private static boolean failsByCurves(Trial trial, int row, double scale) {
      LimitSet set = scaled(trial.set(), scale);
      Optional<Uncertainty> worth = trial.worth().get(trial.group(row));
      Guard guard = new Guard(set.decision(), worth);
      JudgedPair pair =
          new JudgedPair(
              trial.pairs().get(row),
              guard,
              set.smoothing().apply(FLAT.level()),
              set.smoothing(),
              set.level().band());
      Findings findings = new Findings();
      List<RegionLimits> regions = set.regions().stream().map(RegionLimits::new).toList();
      new WindowCheck(set.level().band(), regions).look(pair, findings);
      new MatchCheck(regions).look(pair, findings, Optional.empty());
      return findings.judgement(pair).verdict() == Verdict.FAIL;
    }

    private static LimitSet scaled(LimitSet set, double scale) {
      Region[] regions =
          set.regions().stream()
              .map(
                  r ->
                      new Region(
                          r.name(),
                          r.band(),
                          about(r.lower(), r.upper(), -scale),
                          about(r.lower(), r.upper(), scale),
                          r.match().map(m -> new Span(m.start() * scale, m.end() * scale)),
                          r.required()))
              .toArray(Region[]::new);
      return with(set, set.level(), List.of(regions), set.decision());
    }

    private static Span about(Span lower, Span upper, double scale) {
      return new Span(
          (lower.start() + upper.start()) / 2 + scale * (upper.start() - lower.start()) / 2,
          (lower.end() + upper.end()) / 2 + scale * (upper.end() - lower.end()) / 2);
    }
  }

  @Test
  void tablesKeepWhatWasAdded() {
    Trial trial = trial(7);
    PairTable table = trial.table();

    int row = 271; // in a second block of its group
    JudgedPair pair =
        new JudgedPair(
            trial.pairs().get(row),
            new Guard(new LimitSet.DecisionRule(false, 0, false), Optional.empty()),
            trial.set().smoothing().apply(FLAT.level()),
            trial.set().smoothing(),
            trial.set().level().band());
    for (int i = 0; i < Grid.POINTS; i += 40) {
      // 32-bit floats of a few dB
      assertThat((double) table.deviation(row, Channel.LEFT, i))
          .isCloseTo(pair.deviation(Channel.LEFT).orElseThrow().at(i), within(1e-6));
      assertThat((double) table.difference(row, i))
          .isCloseTo(pair.difference().at(i), within(1e-6));
    }
    assertThat(table.alignment(row, Channel.RIGHT))
        .isEqualTo(pair.alignment(Channel.RIGHT).orElseThrow());
  }

  private static Outcome outcome(Trial trial) {
    return new FlatJudge(trial.set(), FLAT, trial.worth()).judge(trial.table());
  }

  private static Verdict verdict(byte state) {
    return switch (state) {
      case Outcome.PASS -> Verdict.PASS;
      case Outcome.FAIL -> Verdict.FAIL;
      default -> Verdict.INVALID;
    };
  }

  /** Limits, rules, uncertainties and pairs, all from the seed. */
  private static Trial trial(long seed) {
    Random random = new Random(seed);
    Smoothing smoothing = Smoothing.values()[random.nextInt(Smoothing.values().length)];
    LimitSet plain = Pairs.set(smoothing, false, regions(random));
    LimitSet.LevelLimit level =
        new LimitSet.LevelLimit(
            Pairs.ALIGNMENT, -0.5 - random.nextDouble(), 0.5 + random.nextDouble(), 1.2);
    int rule = random.nextInt(3);
    LimitSet.DecisionRule decision =
        new LimitSet.DecisionRule(rule > 0, rule > 0 ? 1 : 0, rule == 1);
    List<Optional<Uncertainty>> worth = new ArrayList<>();
    for (int group = 0; group < 3; group++) {
      worth.add(random.nextInt(5) == 0 ? Optional.empty() : Optional.of(uncertainty(random)));
    }
    List<MeasuredPair> pairs = new ArrayList<>();
    for (int row = 0; row < PAIRS; row++) {
      pairs.add(randomPair(random));
    }
    return new Trial(with(plain, level, List.copyOf(plain.regions()), decision), worth, pairs);
  }

  private static Region[] regions(Random random) {
    return new Region[] {
      region("bass", 20, 200, flat(random, -1), flat(random, 1), Span.constant(1.6)),
      region("mid", 200, 6000, sloped(random, -1), sloped(random, 1), sloped(random, 0.9)),
      new Region(
          "treble",
          new evenpair.acoustics.Band(6000, 16_000),
          sloped(random, -1),
          sloped(random, 1),
          random.nextBoolean() ? Optional.of(sloped(random, 1)) : Optional.empty(),
          random.nextBoolean())
    };
  }

  private static Span flat(Random random, double sign) {
    return Span.constant(sign * (1 + random.nextDouble()));
  }

  private static Span sloped(Random random, double sign) {
    return new Span(sign * (1 + random.nextDouble()), sign * (1 + 2 * random.nextDouble()));
  }

  /** One in four has nothing to tell above 12 kHz. */
  private static Uncertainty uncertainty(Random random) {
    double u = 0.05 + 0.2 * random.nextDouble();
    boolean partly = random.nextInt(4) == 0;
    Curve curve = Curve.from(hz -> partly && hz > 12_000 ? Double.NaN : u * (1 + hz / 40_000));
    return new Uncertainty(curve, curve, u, u);
  }

  /** One in ten ends at 14 kHz, one in fifty begins at 500 Hz. */
  private static MeasuredPair randomPair(Random random) {
    Curve left = Pairs.random(random, 0.3, 0.4, 0.12);
    Curve right = Pairs.random(random, 0.3, 0.4, 0.12);
    if (random.nextInt(10) == 0) {
      left = Pairs.without(left, 14_000, 20_000);
    }
    if (random.nextInt(50) == 0) {
      right = Pairs.without(right, 20, 500);
    }
    return pair(left, right);
  }

  private static LimitSet with(
      LimitSet set,
      LimitSet.LevelLimit level,
      List<Region> regions,
      LimitSet.DecisionRule decision) {
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
        set.polarity(),
        set.idleNoiseDba(),
        set.signalToNoiseDb(),
        set.seating(),
        set.verificationDb(),
        decision);
  }
}
