package evenpair.demo.study;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/**
 * Pairs of an invented product, as many as wanted: an offset and five shapes over frequency, each
 * shared by both sides for the most part, and a little roughness. Nothing is smoothed, so that what
 * is drawn is what is judged.
 */
final class SimulatedPopulation {
  /** What the numbers behind a unit are distributed like. */
  enum Kind {
    NORMAL,
    /** Exponential, to one side. */
    SKEWED,
    /**
     * Two machines that put different offsets and bass on what they make, one unit each in turn.
     */
    TWO_MACHINES
  }

  static final GoldenResponse GOLDEN = new GoldenResponse(Curve.from(hz -> 100), Optional.empty());

  static final LimitSet SET =
      new LimitSet(
          "study-1",
          "plain",
          1,
          EarSimulator.IEC_60318_4,
          "plain-golden.csv",
          new Drive.Voltage(180),
          Smoothing.NONE,
          new LimitSet.LevelLimit(new Band(300, 3000), -1.5, 1.5, 1),
          List.of(
              region("bass", 20, 200, new Span(2, 2)),
              region("mid", 200, 5000, new Span(1.5, 1.5)),
              region("treble", 5000, 16_000, new Span(2, 4))),
          List.of(),
          false,
          OptionalDouble.empty(),
          30,
          new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
          0.5,
          new LimitSet.DecisionRule(false, 0, false));

  private static final int SHAPES = 5;
  private static final double SHARED_DB = 0.35;
  private static final double OWN_DB = 0.15;
  private static final double ROUGH_DB = 0.05;

  private final Kind kind;

  SimulatedPopulation(Kind kind) {
    this.kind = kind;
  }

  private static Region region(String name, double from, double to, Span half) {
    return new Region(
        name,
        new Band(from, to),
        new Span(-half.start(), -half.end()),
        half,
        Optional.of(half),
        true);
  }

  PairTable draw(int pairs, long seed) {
    Random random = new Random(seed);
    PairTable table = new PairTable(SET, GOLDEN);
    for (int pair = 0; pair < pairs; pair++) {
      boolean second = kind == Kind.TWO_MACHINES && random.nextBoolean();
      double[] shared = weights(random, SHARED_DB);
      if (second) {
        shared[0] += 0.6;
        shared[1] += 0.5;
      }
      table.add(0, side(shared, random), side(shared, random));
    }
    return table;
  }

  private double[] weights(Random random, double db) {
    double[] weights = new double[1 + SHAPES];
    for (int k = 0; k < weights.length; k++) {
      weights[k] = db * number(random);
    }
    return weights;
  }

  /** Of mean 0 and standard deviation 1. */
  private double number(Random random) {
    return kind == Kind.SKEWED ? -Math.log1p(-random.nextDouble()) - 1 : random.nextGaussian();
  }

  private Curve side(double[] shared, Random random) {
    double[] own = weights(random, OWN_DB);
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      double x = (double) i / (db.length - 1);
      db[i] = 100 + shared[0] + own[0] + ROUGH_DB * random.nextGaussian();
      for (int k = 1; k <= SHAPES; k++) {
        db[i] += (shared[k] + own[k]) * Math.cos(Math.PI * k * x);
      }
    }
    return Curve.of(db);
  }
}
