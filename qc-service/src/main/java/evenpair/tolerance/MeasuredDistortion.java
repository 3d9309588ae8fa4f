package evenpair.tolerance;

import evenpair.acoustics.Curve;
import java.util.List;

/**
 * Distortion of one channel, as stored, at the excitation frequencies of the grid; every curve in
 * dB re the fundamental there, absent where the order does not fit.
 *
 * @param harmonicsDb orders 2 … 5 in turn
 * @param floorsDb each order's noise floor
 * @param highOrderDb orders 10 … 25 together
 * @param highOrderFloorDb their noise floor
 */
public record MeasuredDistortion(
    List<Curve> harmonicsDb, List<Curve> floorsDb, Curve highOrderDb, Curve highOrderFloorDb) {
  /** The first order held. */
  public static final int LOWEST_ORDER = 2;

  /** The last order held. */
  public static final int HIGHEST_ORDER = 5;

  /**
   * @throws IllegalArgumentException if there are not four harmonics with four floors
   */
  public MeasuredDistortion {
    harmonicsDb = List.copyOf(harmonicsDb);
    floorsDb = List.copyOf(floorsDb);
    int orders = HIGHEST_ORDER - LOWEST_ORDER + 1;
    if (harmonicsDb.size() != orders || floorsDb.size() != orders) {
      throw new IllegalArgumentException(
          "distortion needs orders 2 to 5 with their floors, was given "
              + harmonicsDb.size()
              + " with "
              + floorsDb.size());
    }
  }
}
