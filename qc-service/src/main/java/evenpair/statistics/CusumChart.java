package evenpair.statistics;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

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
   * A sum that went beyond h.
   *
   * @param upwards which of the two
   * @param began place of the first value after the sum's last 0: about where the shift began
   * @param signal place of the first value at which the sum stands above h
   * @param last place of the last one before the sum falls below h again
   */
  public record Shift(boolean upwards, int began, int signal, int last) {}

  /**
   * @return every time that a sum went beyond h, in the order of the signals
   */
  public List<Shift> shifts() {
    List<Shift> shifts = new ArrayList<>();
    add(shifts, high, true);
    add(shifts, low, false);
    shifts.sort(Comparator.comparingInt(Shift::signal));
    return shifts;
  }

  private void add(List<Shift> shifts, double[] sum, boolean upwards) {
    int began = 0;
    int signal = -1;
    for (int t = 0; t < sum.length; t++) {
      began = t > 0 && sum[t - 1] > 0 ? began : t;
      signal = sum[t] <= limit ? -1 : signal < 0 ? t : signal;
      boolean ends = t + 1 == sum.length || sum[t + 1] <= limit;
      if (signal >= 0 && ends) {
        shifts.add(new Shift(upwards, began, signal, t));
      }
    }
  }
}
