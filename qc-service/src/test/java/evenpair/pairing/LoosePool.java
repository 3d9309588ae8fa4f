package evenpair.pairing;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.inspections.PairedEarpieces.InspectedPair;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.MeasuredChannel;
import evenpair.tolerance.MeasuredPair;
import evenpair.tolerance.PairFit;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import evenpair.tolerance.Uncertainty;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.UUID;

/** Invented earpieces of an invented product whose golden response is flat at 100 dB. */
final class LoosePool {
  private static final GoldenResponse FLAT =
      new GoldenResponse(Curve.from(hz -> 100), Optional.empty());

  private LoosePool() {}

  static PairFit fit(boolean guarded) {
    return PairFit.of(set(guarded), FLAT);
  }

  /** Match limits 1.5 dB (20–200 Hz), 1 dB (to 6 kHz), 2.5 to 4 dB (to 16 kHz); balance 1 dB. */
  static LimitSet set(boolean guarded) {
    return new LimitSet(
        "sedge-2",
        "plain",
        1,
        EarSimulator.IEC_60318_4,
        "plain-golden.csv",
        new Drive.Voltage(180),
        Smoothing.NONE,
        new LimitSet.LevelLimit(new Band(300, 3000), -3, 3, 1.0),
        List.of(
            region("bass", 20, 200, 4, Span.constant(1.5)),
            region("mid", 200, 6000, 4, Span.constant(1)),
            region("treble", 6000, 16_000, 8, new Span(2.5, 4))),
        List.of(),
        false,
        OptionalDouble.empty(),
        30,
        new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
        0.5,
        new LimitSet.DecisionRule(guarded, guarded ? 1 : 0, true));
  }

  private static Region region(String name, double from, double to, double window, Span match) {
    return new Region(
        name,
        new Band(from, to),
        Span.constant(-window),
        Span.constant(window),
        Optional.of(match),
        true);
  }

  /** A smooth curve around 100 dB: an offset and two slow waves, drawn from the seed. */
  static Curve curve(Random random, double spreadDb) {
    double offset = spreadDb * random.nextGaussian();
    double slow = spreadDb * random.nextGaussian();
    double fast = spreadDb * random.nextGaussian();
    double phase = 2 * Math.PI * random.nextDouble();
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      double along = 2 * Math.PI * i / db.length;
      db[i] = 100 + offset + slow * Math.sin(along + phase) + fast * Math.sin(5 * along + phase);
    }
    return Curve.of(db);
  }

  static InspectedPair unit(
      String serial, String station, Curve left, Curve right, Optional<Uncertainty> uncertainty) {
    return new InspectedPair(
        new UUID(7, serial.hashCode()),
        serial,
        "SW-2647",
        "sedge-2",
        "plain",
        station,
        "production",
        "FAIL",
        List.of(),
        serial + ".L",
        serial + ".R",
        new UUID(1, 1),
        Instant.parse("2026-11-25T07:00:00Z"),
        new MeasuredPair(
            new MeasuredChannel(left, Optional.empty()),
            new MeasuredChannel(right, Optional.empty())),
        uncertainty);
  }

  static List<Loose> side(PairFit fit, List<InspectedPair> units, Channel side) {
    List<Loose> earpieces = new ArrayList<>();
    for (InspectedPair unit : units) {
      earpieces.add(
          new Loose(
              side,
              side == Channel.LEFT ? unit.leftEarpiece() : unit.rightEarpiece(),
              unit,
              fit.look(unit.pair(), unit.uncertainty()).get(side)));
    }
    return earpieces;
  }

  /**
   * @return units whose earpieces spread so that about a third of all pairs keep their limits
   */
  static List<InspectedPair> units(long seed, int n) {
    Random random = new Random(seed);
    List<InspectedPair> units = new ArrayList<>();
    for (int i = 0; i < n; i++) {
      units.add(
          unit(
              "SG2-%06d".formatted(i),
              "bench-1",
              curve(random, 0.4),
              curve(random, 0.4),
              Optional.empty()));
    }
    return units;
  }
}
