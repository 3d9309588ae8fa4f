package evenpair.statistics;

/**
 * What {@link Columns} found, one value a column in each array.
 *
 * @param count numbers present
 * @param mean arithmetic mean; NaN where nothing is present
 * @param sd standard deviation with n − 1; NaN where fewer than two are present
 * @param percentiles first index: the percentage asked for, second: the column; NaN where nothing
 *     is present
 */
public record ColumnStatistics(int[] count, double[] mean, double[] sd, double[][] percentiles) {

  /** Collects the columns one by one. */
  static final class Builder {
    private final int[] count;
    private final double[] mean;
    private final double[] sd;
    private final double[][] percentiles;

    Builder(int columns, double[] percents) {
      count = new int[columns];
      mean = new double[columns];
      sd = new double[columns];
      percentiles = new double[percents.length][columns];
    }

    void put(int column, Description found) {
      count[column] = found.count();
      mean[column] = found.mean();
      sd[column] = found.sd();
      for (int i = 0; i < percentiles.length; i++) {
        percentiles[i][column] = found.percentiles()[i];
      }
    }

    ColumnStatistics build() {
      return new ColumnStatistics(count, mean, sd, percentiles);
    }
  }
}
