package evenpair.statistics;

import java.util.Arrays;

/**
 * p chart: the share of each group against p̄ ± 3·√(p̄(1 − p̄)/n). Limits below 0 or above 1 cannot
 * be crossed and stand at 0 and 1.
 */
public final class ProportionChart {
  private ProportionChart() {}

  /**
   * @param hits in each group, not above its size
   * @param sizes of the groups, 1 upwards
   */
  public static Finding<ControlChart> of(int[] hits, int[] sizes) {
    return of(hits, sizes, hits.length);
  }

  /**
   * @param baseline how many groups, from the first, set the limits; all that there are if fewer
   */
  public static Finding<ControlChart> of(int[] hits, int[] sizes, int baseline) {
    if (hits.length != sizes.length) {
      throw new IllegalArgumentException(hits.length + " counts for " + sizes.length + " groups");
    }
    if (hits.length < ControlChart.LEAST_POINTS) {
      return new Finding.NotEnough<>(Finding.Lack.GROUPS, hits.length, ControlChart.LEAST_POINTS);
    }
    int used = Math.min(hits.length, Math.max(baseline, ControlChart.LEAST_POINTS));
    double all = Arrays.stream(sizes).limit(used).sum();
    double mean = Arrays.stream(hits).limit(used).sum() / all;
    double[] points = new double[hits.length];
    double[] lower = new double[hits.length];
    double[] upper = new double[hits.length];
    for (int g = 0; g < hits.length; g++) {
      double half = 3 * Math.sqrt(mean * (1 - mean) / sizes[g]);
      points[g] = new Proportion(hits[g], sizes[g]).share();
      lower[g] = Math.max(0, mean - half);
      upper[g] = Math.min(1, mean + half);
    }
    return new Finding.Found<>(new ControlChart(points, mean, lower, upper));
  }
}
