package evenpair.demo.earpiece;

import java.util.random.RandomGenerator;

/**
 * How one earpiece sits on the ear simulator in one seating.
 *
 * @param depth insertion as a fraction by which the canal's length mode is raised; 0 is nominal
 * @param bassDb change of the deepest bass by a slightly better or worse seal, dB
 * @param leakHz corner of the high-pass that a leak makes, Hz; 0 is tight
 */
public record Mounting(double depth, double bassDb, double leakHz) {
  private static final double BASS_SHELF_HZ = 80;

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
    return new Mounting(depth, bassDb, cornerHz);
  }

  Phasors applyTo(Phasors response, Canal canal) {
    canal.applyTo(response, depth);
    if (bassDb != 0) {
      Section.lowShelf(BASS_SHELF_HZ, bassDb).applyTo(response);
    }
    if (leakHz > 0) {
      Section.firstOrderHighPass(leakHz).applyTo(response);
    }
    return response;
  }
}
