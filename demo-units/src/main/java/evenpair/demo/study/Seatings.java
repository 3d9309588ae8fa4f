package evenpair.demo.study;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.demo.earpiece.Mounting;
import java.util.random.RandomGenerator;

/** Draws seatings that are bad enough to be called bad, and weak bass drivers. */
final class Seatings {
  /** A loss is counted where the rule looks for it. */
  private static final Band LOWEST = new Band(20, 50);

  private static final double LEAST_LOSS_DB = 3;

  private Seatings() {}

  /** A weak driver: a first-order low shelf. */
  record Shelf(double hz, double gainDb) {}

  /**
   * @return a careful seating that leaks by 3 dB or more at 20–50 Hz: a high-pass of first or
   *     second order with a corner of 15 to 900 Hz, even in log frequency
   */
  static Mounting leaking(RandomGenerator random) {
    while (true) {
      double hz = logUniform(15, 900, random);
      int order = random.nextBoolean() ? 1 : 2;
      if (lossDb(hz, order) >= LEAST_LOSS_DB) {
        return Mounting.careful(random).leaking(hz, order);
      }
    }
  }

  /**
   * @return a careful seating that is 10 to 25 % too deep or not deep enough
   */
  static Mounting misplaced(RandomGenerator random) {
    double off = random.nextDouble(0.10, 0.25);
    return Mounting.careful(random).deeper(random.nextBoolean() ? off : -off);
  }

  /**
   * @return a low shelf of −4 to −6 dB at 100 to 560 Hz, even in log frequency
   */
  static Shelf weakBass(RandomGenerator random) {
    return new Shelf(logUniform(100, 560, random), random.nextDouble(-6, -4));
  }

  /** Mean loss at 20–50 Hz of a high-pass; with Q = 0.7 near Butterworth's for second order. */
  private static double lossDb(double cornerHz, int order) {
    return -Curve.from(hz -> -10 * Math.log10(1 + Math.pow(cornerHz / hz, 2 * order))).mean(LOWEST);
  }

  private static double logUniform(double from, double to, RandomGenerator random) {
    return from * Math.pow(to / from, random.nextDouble());
  }
}
