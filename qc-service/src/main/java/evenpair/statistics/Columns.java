package evenpair.statistics;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * A table of numbers as one flat array, row by row (all columns of the first row, then of the
 * second …). NaN marks a number that is absent; it is left out of its column. The array is shared,
 * not copied: do not write to it.
 */
public final class Columns {
  /** From this many rows on columns are no longer sorted. */
  static final int LARGE = 2000;

  private static final int STRIP = 16;

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
    if (rows < LARGE) {
      double[] column = new double[rows];
      for (int c = 0; c < columns; c++) {
        int count = gather(c, column);
        all.put(c, Description.ofSorted(column, count, percents));
      }
    } else {
      int strips = (columns + STRIP - 1) / STRIP;
      IntStream.range(0, strips).parallel().forEach(strip -> describe(strip, all, percents));
    }
    return all.build();
  }

  /** A few neighbouring columns at a time: a row's numbers lie side by side in memory. */
  private void describe(int strip, ColumnStatistics.Builder all, double... percents) {
    int first = strip * STRIP;
    int width = Math.min(STRIP, columns - first);
    float[][] taken = new float[width][rows];
    int[] count = new int[width];
    for (int row = 0; row < rows; row++) {
      int at = row * columns + first;
      for (int c = 0; c < width; c++) {
        float value = values[at + c];
        taken[c][count[c]] = value;
        count[c] += Float.isNaN(value) ? 0 : 1;
      }
    }
    LargeColumn column = new LargeColumn();
    for (int c = 0; c < width; c++) {
      all.put(
          first + c,
          count[c] < 2
              ? Description.of(widened(taken[c], count[c]), percents)
              : column.describe(taken[c], count[c], percents));
    }
  }

  private static double[] widened(float[] values, int count) {
    double[] wide = new double[count];
    for (int i = 0; i < count; i++) {
      wide[i] = values[i];
    }
    return wide;
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
