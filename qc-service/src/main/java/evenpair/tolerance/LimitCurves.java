package evenpair.tolerance;

import evenpair.acoustics.Grid;
import java.util.Arrays;

/**
 * A set's limits at the 241 grid points, for drawing and for statistics; where two regions share an
 * edge point, the tighter limit. NaN where no region judges.
 *
 * @param lowerDb lowest allowed deviation from golden, dB
 * @param upperDb highest allowed deviation from golden, dB
 * @param matchDb largest allowed |left − right|, dB
 */
public record LimitCurves(double[] lowerDb, double[] upperDb, double[] matchDb) {

  /**
   * @return the limits of every region of the set; arrays of the caller's own
   */
  public static LimitCurves of(LimitSet set) {
    LimitCurves curves = new LimitCurves(absent(), absent(), absent());
    for (Region region : set.regions()) {
      for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
        curves.tighten(region, i);
      }
    }
    return curves;
  }

  private void tighten(Region region, int i) {
    double hz = Grid.hz(i);
    double lower = region.lower().at(hz, region.band());
    double upper = region.upper().at(hz, region.band());
    lowerDb[i] = Double.isNaN(lowerDb[i]) ? lower : Math.max(lowerDb[i], lower);
    upperDb[i] = Double.isNaN(upperDb[i]) ? upper : Math.min(upperDb[i], upper);
    if (region.match().isPresent()) {
      double match = region.match().get().at(hz, region.band());
      matchDb[i] = Double.isNaN(matchDb[i]) ? match : Math.min(matchDb[i], match);
    }
  }

  private static double[] absent() {
    double[] none = new double[Grid.POINTS];
    Arrays.fill(none, Double.NaN);
    return none;
  }
}
