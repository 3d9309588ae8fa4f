package evenpair.statistics;

/**
 * Two one-sided cumulative sums: S⁺ = max(0, S⁺ + x − target − k), S⁻ = max(0, S⁻ + target − k −
 * x); a sum above h signals. The place where a signalling sum last stood at 0 is its estimate of
 * when the shift began. Source: E. S. Page, Biometrika 41 (1954) 100–115 (from memory).
 *
 * @param high S⁺ at each value
 * @param low S⁻ at each value
 * @param limit h
 */
public record CusumChart(double[] high, double[] low, double limit) {
  /**
   * @param values in order, finite
   * @param k allowance: half the shift to be found, in the values' unit, 0 or above
   * @param h decision interval, in the values' unit, above 0
   */
  public static CusumChart of(double[] values, double target, double k, double h) {
    if (!(k >= 0) || !(h > 0)) {
      throw new IllegalArgumentException("k must be 0 or above and h above 0: " + k + ", " + h);
    }
    double[] high = new double[values.length];
    double[] low = new double[values.length];
    double up = 0;
    double down = 0;
    for (int t = 0; t < values.length; t++) {
      up = Math.max(0, up + values[t] - target - k);
      down = Math.max(0, down + target - k - values[t]);
      high[t] = up;
      low[t] = down;
    }
    return new CusumChart(high, low, h);
  }

  /**
   * @return place of the first value at which a sum stands above h; −1 if none does
   */
  public int firstSignal() {
    for (int t = 0; t < high.length; t++) {
      if (signals(t)) {
        return t;
      }
    }
    return -1;
  }

  /**
   * @return true if a sum stands above h
   */
  public boolean signals(int t) {
    return high[t] > limit || low[t] > limit;
  }

  /**
   * @param signal place of a value that signals
   * @return place of the first value after the signalling sum's last 0: about where the shift began
   */
  public int began(int signal) {
    double[] sum = high[signal] > limit ? high : low;
    int begin = signal;
    while (begin > 0 && sum[begin - 1] > 0) {
      begin--;
    }
    return begin;
  }
}
