package evenpair.statistics;

import java.util.Arrays;

/**
 * Column by column of a table, what a few odd rows cannot move: the median, and the median absolute
 * deviation from it.
 *
 * @param count numbers present in each column
 * @param median NaN for an empty column
 * @param deviation median of |x − median|, not scaled; NaN for an empty column
 */
public record RobustColumns(int[] count, double[] median, double[] deviation) {
  /**
   * 1/Φ⁻¹(¾): the median absolute deviation times this estimates the standard deviation of a normal
   * distribution.
   */
  public static final double TO_STANDARD_DEVIATION = 1.482602218505602;

  /**
   * @param rows equally long; NaN marks a number that is absent
   * @param columns their length
   */
  public static RobustColumns of(double[][] rows, int columns) {
    int[] count = new int[columns];
    double[] median = new double[columns];
    double[] deviation = new double[columns];
    for (int c = 0; c < columns; c++) {
      int column = c;
      double[] present =
          Arrays.stream(rows)
              .mapToDouble(row -> row[column])
              .filter(value -> !Double.isNaN(value))
              .toArray();
      double middle = median(present);
      count[c] = present.length;
      median[c] = middle;
      deviation[c] = median(Arrays.stream(present).map(x -> Math.abs(x - middle)).toArray());
    }
    return new RobustColumns(count, median, deviation);
  }

  /**
   * @param values any order, without NaN; not changed
   * @return the middle one, or the mean of the middle two; NaN without values
   */
  public static double median(double[] values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }
}
