package evenpair.demo.earpiece;

import java.util.random.RandomGenerator;

/**
 * How one earpiece sits on the ear simulator in one seating.
 *
 * @param depth insertion as a fraction by which the canal's length mode is raised; 0 is nominal
 * @param bassDb change of the deepest bass by a slightly better or worse seal, dB
 * @param leakHz corner of the high-pass that a leak makes, Hz; 0 is tight
 * @param leakOrder order of that high-pass: 1 a narrow slit, 2 a wide gap whose air moves as a mass
 */
public record Mounting(double depth, double bassDb, double leakHz, int leakOrder) {
  private static final double BASS_SHELF_HZ = 80;
  private static final double LEAK_Q = 0.7;

  public Mounting {
    if (leakOrder != 1 && leakOrder != 2) {
      throw new IllegalArgumentException("a leak is of order 1 or 2, was " + leakOrder);
    }
  }

  /** A seating that, if it leaks, leaks through a slit. */
  public Mounting(double depth, double bassDb, double leakHz) {
    this(depth, bassDb, leakHz, 1);
  }

  /** Nominal depth, nominal seal. */
  public static final Mounting NOMINAL = new Mounting(0, 0, 0);

  /**
   * A careful operator's seating: depth within ± 1.4 % and bass within ± 0.2 dB (twice the standard
   * deviation each; beyond it the operator sees it and mounts again).
   */
  public static Mounting careful(RandomGenerator random) {
    return new Mounting(0.007 * Spread.bounded(random), 0.1 * Spread.bounded(random), 0);
  }

  /**
   * @return the same seating with an eartip that does not seal
   */
  public Mounting leaking(double cornerHz) {
    return leaking(cornerHz, 1);
  }

  /**
   * @param order 1 or 2
   */
  public Mounting leaking(double cornerHz, int order) {
    return new Mounting(depth, bassDb, cornerHz, order);
  }

  /**
   * @return the same seating too deep by that fraction (below 0: not deep enough)
   */
  public Mounting deeper(double fraction) {
    return new Mounting(depth + fraction, bassDb, leakHz, leakOrder);
  }

  Phasors applyTo(Phasors response, Canal canal) {
    canal.applyTo(response, depth);
    if (bassDb != 0) {
      Section.lowShelf(BASS_SHELF_HZ, bassDb).applyTo(response);
    }
    if (leakHz > 0) {
      leak().applyTo(response);
    }
    return response;
  }

  private Section leak() {
    return leakOrder == 1 ? Section.firstOrderHighPass(leakHz) : Section.highPass(leakHz, LEAK_Q);
  }
}
