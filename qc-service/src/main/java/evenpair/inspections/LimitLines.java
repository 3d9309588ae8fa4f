package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Region;
import java.util.Arrays;
import java.util.List;

/**
 * The limits of all regions drawn as curves; absent outside regions. Where two regions share a
 * point both are judged, so the tighter limit is drawn.
 *
 * @param lower lowest allowed deviation, dB
 * @param upper highest allowed deviation, dB
 * @param match largest allowed |left − right|, dB
 */
record LimitLines(Curve lower, Curve upper, Curve match) {
  static LimitLines of(List<Region> regions) {
    double[] lower = absent();
    double[] upper = absent();
    double[] match = absent();
    for (Region region : regions) {
      for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
        double hz = Grid.hz(i);
        lower[i] = tighter(lower[i], region.lower().at(hz, region.band()), true);
        upper[i] = tighter(upper[i], region.upper().at(hz, region.band()), false);
        if (region.match().isPresent()) {
          match[i] = tighter(match[i], region.match().get().at(hz, region.band()), false);
        }
      }
    }
    return new LimitLines(Curve.of(lower), Curve.of(upper), Curve.of(match));
  }

  private static double tighter(double before, double limit, boolean higherIsTighter) {
    if (Double.isNaN(before)) {
      return limit;
    }
    return higherIsTighter ? Math.max(before, limit) : Math.min(before, limit);
  }

  private static double[] absent() {
    double[] values = new double[Grid.POINTS];
    Arrays.fill(values, Double.NaN);
    return values;
  }
}
