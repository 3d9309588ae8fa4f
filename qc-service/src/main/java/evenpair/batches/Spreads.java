package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.BatchJson.Channel;
import evenpair.batches.BatchJson.Difference;
import evenpair.batches.BatchJson.Spread;
import evenpair.statistics.ColumnStatistics;
import evenpair.statistics.Columns;
import evenpair.statistics.Quantiles;
import java.util.LinkedHashMap;
import java.util.Map;

/** Mean, standard deviation and percentiles at every grid point. */
final class Spreads {
  /** Percentages shown; symmetric about the median. */
  static final double[] PERCENTS = {0.5, 2.5, 50, 97.5, 99.5};

  private Spreads() {}

  static Channel channel(float[] levels, float[] deviations) {
    return new Channel(levels.length / Grid.POINTS, spread(levels), spread(deviations));
  }

  static Difference difference(float[] differences) {
    Spread spread = spread(differences);
    return new Difference(
        differences.length / Grid.POINTS, spread.mean(), spread.sd(), spread.percentiles());
  }

  /**
   * @return how many units the percentage needs before it says more than the most extreme unit does
   */
  static int unitsNeeded(double percent) {
    return Quantiles.unitsNeeded(percent / 100);
  }

  /**
   * @return {@code 0.5}, {@code 50}: as the answer's keys are written
   */
  static String key(double percent) {
    return percent == Math.rint(percent) ? Long.toString((long) percent) : Double.toString(percent);
  }

  private static Spread spread(float[] flat) {
    ColumnStatistics found = Columns.of(flat, Grid.POINTS).describe(PERCENTS);
    Map<String, double[]> percentiles = new LinkedHashMap<>();
    for (int i = 0; i < PERCENTS.length; i++) {
      percentiles.put(key(PERCENTS[i]), Rounded.of(found.percentiles()[i]));
    }
    return new Spread(Rounded.of(found.mean()), Rounded.of(found.sd()), percentiles);
  }
}
