package evenpair.statistics;

import org.apache.commons.math3.distribution.FDistribution;

/**
 * One-way analysis of variance: do groups (stations, batches) differ by more than their members
 * scatter? SS_between = Σ n_g·(x̄_g − x̄)², SS_within = ΣΣ(x − x̄_g)², F = MS_between/MS_within on
 * (k − 1, n − k) degrees of freedom.
 *
 * @param between between groups
 * @param within inside groups
 */
public record OneWayAnova(GaugeStudy.Source between, GaugeStudy.Source within) {
  /**
   * @param groups two at least, together more numbers than groups, none empty, all finite
   * @throws IllegalArgumentException otherwise
   */
  public static OneWayAnova of(double[]... groups) {
    int n = 0;
    CompensatedSum all = new CompensatedSum();
    for (double[] group : groups) {
      if (group.length == 0) {
        throw new IllegalArgumentException("no group may be empty");
      }
      n += group.length;
      all.add(Description.of(group).mean() * group.length);
    }
    if (groups.length < 2 || n <= groups.length) {
      throw new IllegalArgumentException(
          "an analysis of variance needs 2 groups and more values than groups");
    }
    return squares(groups, n, all.value() / n);
  }

  private static OneWayAnova squares(double[][] groups, int n, double mean) {
    CompensatedSum between = new CompensatedSum();
    CompensatedSum within = new CompensatedSum();
    for (double[] group : groups) {
      double groupMean = Description.of(group).mean();
      between.add(group.length * (groupMean - mean) * (groupMean - mean));
      for (double value : group) {
        within.add((value - groupMean) * (value - groupMean));
      }
    }
    return new OneWayAnova(
        new GaugeStudy.Source(between.value(), groups.length - 1),
        new GaugeStudy.Source(within.value(), n - groups.length));
  }

  /**
   * @return MS_between/MS_within; infinite or NaN where nothing scatters inside the groups
   */
  public double f() {
    return between.meanSquare() / within.meanSquare();
  }

  /**
   * @return probability of an F as large as this if the groups do not differ
   */
  public double p() {
    return 1
        - new FDistribution(null, between.degreesOfFreedom(), within.degreesOfFreedom())
            .cumulativeProbability(f());
  }
}
