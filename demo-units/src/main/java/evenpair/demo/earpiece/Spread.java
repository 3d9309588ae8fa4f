package evenpair.demo.earpiece;

import java.util.List;
import java.util.random.RandomGenerator;

/**
 * Spread from unit to unit. What a unit's two sides share (one lot of drivers, one assembly day)
 * varies more than what tells them apart, since a maker sorts drivers before pairing them. Sizes
 * are invented so that a good unit keeps clear of windows of ± 1.5 dB and of a match limit of 1 dB.
 */
final class Spread {
  private static final double LOUDNESS_DB = 0.22;
  private static final double TUNING = 0.010;
  private static final double SENSITIVITY_DB = 0.25;
  private static final double BEND = 0.15;
  private static final double SIDE = 0.38;

  private Spread() {}

  /** One driver's departure from nominal. */
  private record Departure(double db, double factor) {
    Driver applyTo(Driver driver) {
      return driver.louder(db).tuned(factor);
    }
  }

  /**
   * @return what both sides of one unit have in common
   */
  static Earpiece unit(Earpiece nominal, RandomGenerator random) {
    return spread(nominal, random, 1);
  }

  /**
   * @return one side of the unit
   */
  static Earpiece side(Earpiece unit, RandomGenerator random) {
    return spread(unit, random, SIDE);
  }

  /**
   * @return a standard normal number, drawn again while beyond ± 2: a sorted lot has no tails
   */
  static double bounded(RandomGenerator random) {
    double value = random.nextGaussian();
    while (Math.abs(value) > 2) {
      value = random.nextGaussian();
    }
    return value;
  }

  private static Earpiece spread(Earpiece from, RandomGenerator random, double share) {
    List<Driver> drivers =
        from.drivers().stream()
            .map(
                driver ->
                    new Departure(
                            share * LOUDNESS_DB * bounded(random),
                            1 + share * TUNING * bounded(random))
                        .applyTo(driver))
            .toList();
    return from.withDrivers(drivers)
        .louder(share * SENSITIVITY_DB * bounded(random))
        .moving(motion -> motion.bent(1 + share * BEND * bounded(random)));
  }
}
