package evenpair.benchmarks;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.FlatJudge;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;

/**
 * What a trial over 100,000 loaded pairs costs, and what reading their curves once would cost: the
 * sum of every number that a trial compares.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.SampleTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(jvmArgs = "-Xmx1200m")
public class TrialBenchmark {
  private static final int PAIRS = 100_000;
  private static final GoldenResponse GOLDEN =
      new GoldenResponse(Curve.from(hz -> 100), Optional.empty());

  private final LimitSet set = set();
  private final FlatJudge judge = new FlatJudge(set, GOLDEN, List.of(Optional.empty()));
  private final PairTable table = new PairTable(set, GOLDEN);
  private float[] numbers;

  /** A few hundred curves, again and again: what is compared does not change what it costs. */
  @Setup
  public void measure() {
    Random random = new Random(1);
    Curve[] curves = new Curve[401];
    for (int k = 0; k < curves.length; k++) {
      double wave = 0.4 * random.nextGaussian();
      double phase = 6 * random.nextDouble();
      curves[k] = Curve.from(hz -> 100 + wave * Math.sin(Math.log(hz) + phase));
    }
    for (int pair = 0; pair < PAIRS; pair++) {
      table.add(0, curves[pair % 401], curves[(pair * 7 + 3) % 401]);
    }
    numbers = new float[3 * Grid.POINTS * PAIRS];
    for (int at = 0; at < numbers.length; at++) {
      numbers[at] = table.deviation(at % PAIRS, Channel.LEFT, at % Grid.POINTS);
    }
  }

  @Benchmark
  public FlatJudge.Outcome trial() {
    return judge.judge(table);
  }

  @Benchmark
  public float[] criticalScales() {
    return judge.criticalScale(table);
  }

  /** Eight sums side by side, so that memory and not one long chain of additions sets the pace. */
  @Benchmark
  public double numbersRead() {
    float[] sums = new float[8];
    for (int at = 0; at + 7 < numbers.length; at += 8) {
      for (int k = 0; k < 8; k++) {
        sums[k] += numbers[at + k];
      }
    }
    double sum = 0;
    for (float part : sums) {
      sum += part;
    }
    return sum;
  }

  private static LimitSet set() {
    return new LimitSet(
        "study-1",
        "plain",
        1,
        EarSimulator.IEC_60318_4,
        "plain-golden.csv",
        new Drive.Voltage(180),
        Smoothing.NONE,
        new LimitSet.LevelLimit(new Band(300, 3000), -1.5, 1.5, 1),
        List.of(
            region("bass", 20, 200, 2),
            region("mid", 200, 5000, 1.5),
            region("treble", 5000, 20_000, 3)),
        List.of(),
        false,
        OptionalDouble.empty(),
        30,
        new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
        0.5,
        new LimitSet.DecisionRule(false, 0, false));
  }

  private static Region region(String name, double from, double to, double half) {
    return new Region(
        name,
        new Band(from, to),
        Span.constant(-half),
        Span.constant(half),
        Optional.of(Span.constant(half)),
        true);
  }
}
