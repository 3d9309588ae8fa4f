package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Optional;
import java.util.Random;
import java.util.function.DoubleUnaryOperator;

/**
 * An earpiece on an ear simulator, worked out anew for each test from magnitudes of simple acoustic
 * elements; shares no formula with what it tests but the high-pass of order one. All spreads are
 * invented.
 */
final class SimulatedMounting {
  static final double MODE_HZ = 8000;
  static final GoldenResponse GOLDEN =
      new GoldenResponse(new SimulatedMounting().level(), Optional.empty());

  private double[] db = Curve.from(SimulatedMounting::driver).toArray();
  private double modeHz = MODE_HZ;

  /** A dynamic driver's own curve: some bass, a broad rise to 3 kHz, falling treble. */
  private static double driver(double hz) {
    double rise = Math.log(hz / 3000) / Math.log(2);
    double treble = hz > 5000 ? -6 * Math.log(hz / 5000) / Math.log(2) : 0;
    return 95 + 6 / (1 + hz * hz / 150 / 150) + 8 * Math.exp(-rise * rise) + treble;
  }

  /**
   * Lossy tube closed at the microphone: x/sin x with x = π·f/f_mode·(1 − 0.06j), magnitude in dB.
   */
  private static double canal(double hz, double modeHz) {
    double re = Math.PI * hz / modeHz;
    double im = -0.06 * re;
    double sine = Math.sin(re) * Math.sin(re) + Math.sinh(im) * Math.sinh(im);
    return 10 * Math.log10((re * re + im * im) / sine);
  }

  /** Unit-to-unit spread: level, tilt, bass shelf and four broad bumps. */
  SimulatedMounting ofAUnit(Random random) {
    double level = 0.5 * random.nextGaussian();
    double tilt = 0.3 * random.nextGaussian();
    double bass = 0.5 * random.nextGaussian();
    add(hz -> level + tilt * Math.log10(hz / 1000) + bass / (1 + hz * hz / 90 / 90));
    for (int bump = 0; bump < 4; bump++) {
      double centre = 100 * Math.pow(160, random.nextDouble());
      double height = 0.5 * random.nextGaussian();
      double width = 0.3 + random.nextDouble();
      add(hz -> height * Math.exp(-Math.pow(Math.log(hz / centre) / width, 2)));
    }
    return this;
  }

  /** Noise of the measurement: 0.1 dB, more towards the bass. */
  SimulatedMounting noisy(Random random) {
    add(hz -> 0.1 * (1 + Math.sqrt(50 / hz)) * random.nextGaussian());
    return this;
  }

  /** A resistive leak: a first-order high-pass. */
  SimulatedMounting leaking(double cornerHz) {
    add(hz -> -10 * Math.log10(1 + cornerHz * cornerHz / hz / hz));
    return this;
  }

  /** A leak with the mass of its air: a second-order high-pass of any damping. */
  SimulatedMounting leakingWithMass(double cornerHz, double q) {
    add(
        hz -> {
          double r = hz / cornerHz;
          return 10 * Math.log10(Math.pow(r, 4) / (Math.pow(1 - r * r, 2) + r * r / q / q));
        });
    return this;
  }

  /**
   * A weak bass driver: from full loss below to none above, as a ratio of two first-order slopes.
   */
  SimulatedMounting weakInTheBass(double cornerHz, double lossDb) {
    double spread = Math.pow(10, lossDb / 40);
    double low = cornerHz / spread;
    double high = cornerHz * spread;
    add(
        hz ->
            10 * Math.log10((hz * hz + low * low) / (hz * hz + high * high))
                + 20 * Math.log10(high / low)
                - lossDb);
    return this;
  }

  SimulatedMounting louder(double db) {
    add(hz -> db);
    return this;
  }

  /**
   * @param share 0.1 for a length mode 10 % higher in frequency
   */
  SimulatedMounting deeper(double share) {
    modeHz = MODE_HZ * (1 + share);
    return this;
  }

  private void add(DoubleUnaryOperator change) {
    for (int i = 0; i < db.length; i++) {
      db[i] += change.applyAsDouble(Grid.hz(i));
    }
  }

  Curve level() {
    double[] whole = db.clone();
    for (int i = 0; i < whole.length; i++) {
      whole[i] += canal(Grid.hz(i), modeHz);
    }
    return Curve.of(whole);
  }

  MeasuredChannel channel() {
    return Pairs.channel(level());
  }
}
