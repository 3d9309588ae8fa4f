package evenpair.acoustics;

import java.util.List;

/**
 * Harmonics of one capture at the excitation frequencies of the grid, re the fundamental there.
 *
 * @param harmonics orders 2 … 5 in turn: 10·lg(|H_n(n·f)|²/|H_1(f)|²), dB; absent below 50 Hz and
 *     where n·f does not lie below 0.9 of the sweep's end and of half the sample rate
 * @param floors the same of the lead-in's noise through the same inverse filter and window
 * @param highOrder Σ |H_n|², n = 10 … 25 as far as they fit (4 at least), re |H_1|², dB
 * @param highOrderFloor the same of the noise
 */
public record Distortion(
    List<Curve> harmonics, List<Curve> floors, Curve highOrder, Curve highOrderFloor) {
  /** An order so little above its own floor counts as below it. */
  private static final double ABOVE_FLOOR_DB = 10;

  public Distortion {
    harmonics = List.copyOf(harmonics);
    floors = List.copyOf(floors);
  }

  /**
   * Total harmonic distortion re the fundamental, THD_F = √Σ|H_n|²/|H_1|, n = 2 … 5, as a fraction.
   * Orders within 10 dB of their noise floor count as nothing.
   *
   * @return NaN where not every order fits
   */
  public double thdF(int gridIndex) {
    double sum = 0;
    for (int k = 0; k < harmonics.size(); k++) {
      if (!harmonics.get(k).has(gridIndex)) {
        return Double.NaN;
      }
      double level = harmonics.get(k).at(gridIndex);
      boolean seen = level >= floors.get(k).at(gridIndex) + ABOVE_FLOOR_DB;
      sum += seen ? Math.pow(10, level / 10) : 0;
    }
    return Math.sqrt(sum);
  }

  /**
   * Total harmonic distortion re the whole, THD_R = THD_F/√(1 + THD_F²), as a fraction (IEC
   * 60268-3's definition, from memory).
   */
  public double thdR(int gridIndex) {
    double thdF = thdF(gridIndex);
    return thdF / Math.sqrt(1 + thdF * thdF);
  }

  /**
   * @return what noise alone would show as THD_F, a fraction; NaN where not every order fits
   */
  public double thdFloor(int gridIndex) {
    double sum = 0;
    for (Curve floor : floors) {
      sum += floor.has(gridIndex) ? Math.pow(10, floor.at(gridIndex) / 10) : Double.NaN;
    }
    return Math.sqrt(sum);
  }
}
