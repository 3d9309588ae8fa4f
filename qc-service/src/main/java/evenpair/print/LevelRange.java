package evenpair.print;

import java.util.List;

/**
 * The span of a level axis in dB.
 *
 * @param low lower end, dB
 * @param high upper end, dB, above the lower one
 */
record LevelRange(double low, double high) {
  static final double STEP = 5;
  private static final double LEAST = 25;

  double span() {
    return high - low;
  }

  /**
   * @return this with so many steps more, below and above in turn
   */
  LevelRange wider(int steps) {
    return new LevelRange(low - STEP * ((steps + 1) / 2), high + STEP * (steps / 2));
  }

  /**
   * The least span in whole steps of 5 dB, 25 dB at least, that holds the window and, inside the
   * regions, all curves.
   */
  static LevelRange ofLevels(ResponsePlot plot) {
    double[] ends = {Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY};
    for (double[] curve :
        List.of(plot.left(), plot.right(), plot.golden(), plot.lower(), plot.upper())) {
      widen(ends, curve, plot);
    }
    if (ends[0] > ends[1]) {
      throw new IllegalArgumentException("a plot needs at least one level inside its regions");
    }
    double low = STEP * Math.floor((ends[0] - 1) / STEP);
    double high = STEP * Math.ceil((ends[1] + 1) / STEP);
    return high - low >= LEAST ? new LevelRange(low, high) : new LevelRange(high - LEAST, high);
  }

  /**
   * The span for left − right: the same upwards and downwards, holding limit and curve inside the
   * regions.
   */
  static LevelRange ofDifference(ResponsePlot plot) {
    double[] ends = {-1, 1};
    widen(ends, plot.difference(), plot);
    widen(ends, plot.matchLimit(), plot);
    double reach = Math.ceil(Math.max(-ends[0], ends[1]) * 1.15);
    return new LevelRange(-reach, reach);
  }

  private static void widen(double[] ends, double[] curve, ResponsePlot plot) {
    for (int i = 0; i < curve.length; i++) {
      if (!Double.isNaN(curve[i]) && plot.inARegion(i)) {
        ends[0] = Math.min(ends[0], curve[i]);
        ends[1] = Math.max(ends[1], curve[i]);
      }
    }
  }
}
