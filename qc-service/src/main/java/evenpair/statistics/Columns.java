package evenpair.statistics;

import java.util.Arrays;

/**
 * A table of numbers as one flat array, row by row (all columns of the first row, then of the
 * second …). NaN marks a number that is absent; it is left out of its column. The array is shared,
 * not copied: do not write to it.
 */
public final class Columns {
  private final float[] values;
  private final int columns;
  private final int rows;

  private Columns(float[] values, int columns) {
    this.values = values;
    this.columns = columns;
    this.rows = values.length / columns;
  }

  /**
   * @param values rows × columns numbers, row by row
   * @param columns numbers in a row, 1 upwards
   * @throws IllegalArgumentException if the array does not hold whole rows
   */
  public static Columns of(float[] values, int columns) {
    if (columns < 1 || values.length % columns != 0) {
      throw new IllegalArgumentException(
          values.length + " numbers do not make whole rows of " + columns);
    }
    return new Columns(values, columns);
  }

  /**
   * @return how many rows there are, whatever is absent in them
   */
  public int rows() {
    return rows;
  }

  /**
   * Describes every column.
   *
   * @param percents percentages at which percentiles are wanted, 0 … 100
   * @return for each column its count, mean, standard deviation and percentiles
   */
  public ColumnStatistics describe(double... percents) {
    ColumnStatistics.Builder all = new ColumnStatistics.Builder(columns, percents);
    double[] column = new double[rows];
    for (int c = 0; c < columns; c++) {
      int count = gather(c, column);
      all.put(c, Description.ofSorted(column, count, percents));
    }
    return all.build();
  }

  private int gather(int column, double[] into) {
    int count = 0;
    for (int at = column; at < values.length; at += columns) {
      if (!Float.isNaN(values[at])) {
        into[count++] = values[at];
      }
    }
    Arrays.sort(into, 0, count);
    return count;
  }
}
