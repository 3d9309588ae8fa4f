package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Limit sets, golden responses and pairs for the tests of judging. */
final class Pairs {
  static final Band ALIGNMENT = new Band(300, 3000);
  static final Region BASS =
      region("bass", 20, 200, Span.constant(-2), Span.constant(2), Span.constant(1.5));
  static final Region MID =
      region("mid", 200, 6000, Span.constant(-1.5), Span.constant(1.5), Span.constant(1));
  static final Region TREBLE =
      region("treble", 6000, 16_000, new Span(-3, -6), new Span(3, 6), new Span(2.5, 4));
  static final GoldenResponse FLAT = new GoldenResponse(Curve.from(hz -> 100), Optional.empty());

  private Pairs() {}

  static Region region(String name, double from, double to, Span lower, Span upper, Span match) {
    return new Region(name, new Band(from, to), lower, upper, Optional.ofNullable(match), true);
  }

  static LimitSet set(Smoothing smoothing, boolean polarity, Region... regions) {
    return new LimitSet(
        "sedge-2",
        "plain",
        1,
        EarSimulator.IEC_60318_4,
        "plain-golden.csv",
        new Drive.Voltage(180),
        smoothing,
        new LimitSet.LevelLimit(ALIGNMENT, -1.5, 1.5, 1.0),
        List.of(regions),
        List.of(),
        polarity,
        OptionalDouble.empty(),
        30,
        new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
        0.5,
        new LimitSet.DecisionRule(false, 0, false));
  }

  /** The set of the hand-computed cases: unsmoothed, so that a point stays what it is. */
  static LimitSet plain() {
    return set(Smoothing.NONE, false, BASS, MID, TREBLE);
  }

  static MeasuredPair pair(Curve left, Curve right) {
    return new MeasuredPair(channel(left), channel(right));
  }

  static MeasuredChannel channel(Curve level) {
    return new MeasuredChannel(level, Optional.empty());
  }

  static MeasuredPair swapped(MeasuredPair pair) {
    return new MeasuredPair(pair.right(), pair.left());
  }

  static Curve flat(double db) {
    return Curve.from(hz -> db);
  }

  /** The curve with the level at the grid point nearest to a frequency moved by some dB. */
  static Curve moved(Curve curve, double hz, double db) {
    double[] levels = curve.toArray();
    levels[Grid.nearest(hz)] += db;
    return Curve.of(levels);
  }

  static Curve without(Curve curve, double fromHz, double toHz) {
    double[] levels = curve.toArray();
    for (int i = 0; i < Grid.POINTS; i++) {
      if (new Band(fromHz, toHz).holds(i)) {
        levels[i] = Double.NaN;
      }
    }
    return Curve.of(levels);
  }

  /**
   * A curve such as a unit has: golden, an offset, a slow wave and some roughness, all drawn from
   * the seed.
   */
  static Curve random(Random random, double offsetDb, double waveDb, double roughDb) {
    double offset = offsetDb * random.nextGaussian();
    double wave = waveDb * random.nextGaussian();
    double cycles = 0.5 + 3 * random.nextDouble();
    double phase = 2 * Math.PI * random.nextDouble();
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      db[i] =
          100
              + offset
              + wave * Math.sin(2 * Math.PI * cycles * i / db.length + phase)
              + roughDb * random.nextGaussian();
    }
    return Curve.of(db);
  }

  static MeasuredPair randomPair(long seed) {
    Random random = new Random(seed);
    return pair(random(random, 0.4, 0.5, 0.15), random(random, 0.4, 0.5, 0.15));
  }

  /** The set with other distortion limits. */
  static LimitSet limiting(LimitSet set, LimitSet.DistortionLimit... limits) {
    return copy(set, List.of(limits), set.idleNoiseDba(), set.decision());
  }

  static LimitSet limitingNoise(LimitSet set, double dba) {
    return copy(set, set.distortion(), OptionalDouble.of(dba), set.decision());
  }

  static LimitSet deciding(LimitSet set, double guard, boolean acceptConditionalPass) {
    LimitSet.DecisionRule rule = new LimitSet.DecisionRule(true, guard, acceptConditionalPass);
    return copy(set, set.distortion(), set.idleNoiseDba(), rule);
  }

  private static LimitSet copy(
      LimitSet set,
      List<LimitSet.DistortionLimit> distortion,
      OptionalDouble idleNoiseDba,
      LimitSet.DecisionRule decision) {
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
        distortion,
        set.polaritySame(),
        idleNoiseDba,
        set.signalToNoiseDb(),
        set.seating(),
        set.verificationDb(),
        decision);
  }
}
