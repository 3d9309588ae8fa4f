package evenpair.tolerance;

import java.util.ArrayList;
import java.util.List;

/** A way in which bass may be lost, over frequency. */
sealed interface LossShape {
  /**
   * @return level at a frequency, dB re that far above the corner
   */
  double db(double hz);

  double cornerHz();

  /**
   * @param share of a step of the table, 0 to 1
   * @return the shapes a little to either side, those outside the range left out
   */
  List<LossShape> beside(double share);

  /**
   * @return first- and second-order high-passes with corners of 15–900 Hz, 7 % apart
   */
  static List<LossShape> leaks() {
    List<LossShape> shapes = new ArrayList<>();
    for (int order = 1; order <= 2; order++) {
      for (double hz = Leak.LOWEST_HZ; hz <= Leak.HIGHEST_HZ; hz *= Leak.STEP) {
        shapes.add(new Leak(hz, order));
      }
    }
    return shapes;
  }

  /**
   * @return low shelves with corners of 100–560 Hz, 12 % apart, losing 2 to 20 dB
   */
  static List<LossShape> weakDrivers() {
    List<LossShape> shapes = new ArrayList<>();
    for (double q : WeakDriver.STEEPNESS) {
      for (double hz = WeakDriver.LOWEST_HZ; hz <= WeakDriver.HIGHEST_HZ; hz *= WeakDriver.STEP) {
        for (double db = WeakDriver.LEAST_DB; db <= WeakDriver.MOST_DB; db += WeakDriver.STEP_DB) {
          shapes.add(new WeakDriver(hz, db, q));
        }
      }
    }
    return shapes;
  }

  /**
   * A Butterworth high-pass: −10·lg(1 + (f0/f)^2n).
   *
   * @param cornerHz f0, Hz, −3 dB there
   * @param order n, 1 or 2
   */
  record Leak(double cornerHz, int order) implements LossShape {
    static final double LOWEST_HZ = 15;
    static final double HIGHEST_HZ = 900;
    static final double STEP = 1.07;

    @Override
    public double db(double hz) {
      double square = (cornerHz / hz) * (cornerHz / hz);
      return -10 * Math.log10(1 + (order == 1 ? square : square * square));
    }

    @Override
    public List<LossShape> beside(double share) {
      double factor = Math.pow(STEP, share);
      List<LossShape> shapes = new ArrayList<>();
      for (double hz : new double[] {cornerHz / factor, cornerHz * factor}) {
        if (hz >= LOWEST_HZ && hz <= HIGHEST_HZ) {
          shapes.add(new Leak(hz, order));
        }
      }
      return shapes;
    }
  }

  /**
   * The low shelf of the Audio EQ Cookbook before it is made digital: H(s) = A·(s² + (√A/Q)·s +
   * A)/(A·s² + (√A/Q)·s + 1), A = 10^(−loss/40).
   *
   * @param cornerHz half of the loss (in dB) there
   * @param lossDb at 0 Hz, dB, above 0
   * @param q steepness
   */
  record WeakDriver(double cornerHz, double lossDb, double q) implements LossShape {
    static final double LOWEST_HZ = 100;
    static final double HIGHEST_HZ = 560;
    static final double STEP = 1.12;
    static final double LEAST_DB = 2;
    static final double MOST_DB = 20;
    static final double STEP_DB = 1.5;
    static final double[] STEEPNESS = {0.5, 0.71, 0.9};

    @Override
    public double db(double hz) {
      double a = Math.pow(10, -lossDb / 40);
      double x = hz / cornerHz;
      double damping = a / (q * q) * x * x;
      double above = (a - x * x) * (a - x * x) + damping;
      double below = (1 - a * x * x) * (1 - a * x * x) + damping;
      return 20 * Math.log10(a) + 10 * Math.log10(above / below);
    }

    @Override
    public List<LossShape> beside(double share) {
      double factor = Math.pow(STEP, share);
      double step = STEP_DB * share;
      List<LossShape> shapes = new ArrayList<>();
      add(shapes, cornerHz / factor, lossDb);
      add(shapes, cornerHz * factor, lossDb);
      add(shapes, cornerHz, lossDb - step);
      add(shapes, cornerHz, lossDb + step);
      return shapes;
    }

    private void add(List<LossShape> shapes, double hz, double db) {
      if (hz >= LOWEST_HZ && hz <= HIGHEST_HZ && db >= LEAST_DB && db <= MOST_DB) {
        shapes.add(new WeakDriver(hz, db, q));
      }
    }
  }
}
