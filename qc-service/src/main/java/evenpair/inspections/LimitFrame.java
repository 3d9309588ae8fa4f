package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.products.Products.StoredLimitSet;
import java.util.Arrays;
import java.util.List;

/**
 * Golden response and limits of one limit set as arrays in dB SPL, smoothed as judged; NaN outside
 * regions.
 */
record LimitFrame(
    double[] golden,
    double[] lower,
    double[] upper,
    double[] match,
    List<RegionSpan> regions,
    String smoothing) {

  /**
   * @param limits null: everything absent
   */
  static LimitFrame of(StoredLimitSet limits) {
    if (limits == null) {
      return new LimitFrame(absent(), absent(), absent(), absent(), List.of(), "none");
    }
    Curve golden = limits.set().smoothing().apply(limits.golden().level());
    LimitLines lines = LimitLines.of(limits.set().regions());
    return new LimitFrame(
        golden.toArray(),
        lines.lower().plus(golden).toArray(),
        lines.upper().plus(golden).toArray(),
        lines.match().toArray(),
        CurveDesk.spans(limits),
        limits.set().smoothing().label());
  }

  private static double[] absent() {
    double[] values = new double[Grid.POINTS];
    Arrays.fill(values, Double.NaN);
    return values;
  }
}
