package evenpair.statistics;

/**
 * One-way analysis of variance: groups of measurements of the same thing.
 *
 * <p>Sums of squares between groups Σ n_g·(m_g − m)² and within Σ Σ (x − m_g)², all from values
 * less the first one, so that a small spread beside a large level keeps its digits, and with
 * compensated sums. Variance components for a random grouping: within = MS_within; between =
 * (MS_between − MS_within)/n₀ with n₀ = (N − Σ n_g²/N)/(k − 1), which is n for equal groups.
 * Source: G. W. Snedecor, W. G. Cochran, Statistical Methods, ch. 13 (from memory).
 *
 * @param between between the groups
 * @param within inside the groups
 * @param meanGroupSize n₀
 */
public record OneWayAnova(Source between, Source within, double meanGroupSize) {
  /**
   * @param squares sum of squares
   * @param freedom degrees of freedom
   */
  public record Source(double squares, int freedom) {
    /**
     * @return squares ÷ freedom
     */
    public double mean() {
      return squares / freedom;
    }
  }

  /**
   * @param groups two at least, each with a value at least, and more values than groups
   * @throws IllegalArgumentException if there are too few values or one is not finite
   */
  public static OneWayAnova of(double[]... groups) {
    double origin = origin(groups);
    int count = 0;
    double countSquares = 0;
    CompensatedSum total = new CompensatedSum();
    CompensatedSum within = new CompensatedSum();
    double[] means = new double[groups.length];
    for (int g = 0; g < groups.length; g++) {
      means[g] = mean(groups[g], origin, total);
      count += groups[g].length;
      countSquares += (double) groups[g].length * groups[g].length;
      for (double value : groups[g]) {
        double off = value - origin - means[g];
        within.add(off * off);
      }
    }
    if (count <= groups.length) {
      throw new IllegalArgumentException(
          count + " values in " + groups.length + " groups leave none to tell a spread");
    }
    double grand = total.value() / count;
    CompensatedSum between = new CompensatedSum();
    for (int g = 0; g < groups.length; g++) {
      between.add(groups[g].length * (means[g] - grand) * (means[g] - grand));
    }
    return new OneWayAnova(
        new Source(between.value(), groups.length - 1),
        new Source(within.value(), count - groups.length),
        (count - countSquares / count) / (groups.length - 1));
  }

  /**
   * @return F = MS_between/MS_within; infinite or NaN without any spread inside the groups
   */
  public double f() {
    return between.mean() / within.mean();
  }

  /**
   * @return the share of F's distribution above {@link #f()}; NaN without any spread
   */
  public double p() {
    return FDistributionTail.above(f(), between.freedom(), within.freedom());
  }

  /**
   * @return R² = SS_between/SS_total; NaN without any spread
   */
  public double rSquared() {
    return between.squares() / (between.squares() + within.squares());
  }

  /**
   * @return standard deviation inside the groups, √MS_within
   */
  public double sdWithin() {
    return Math.sqrt(within.mean());
  }

  /**
   * @return variance component of the groups; below 0 when the groups differ less than their own
   *     spread explains: the true one is then taken for 0 and that should be said
   */
  public double varianceBetween() {
    return (between.mean() - within.mean()) / meanGroupSize;
  }

  private static double origin(double[][] groups) {
    if (groups.length < 2) {
      throw new IllegalArgumentException("two groups at least, was given " + groups.length);
    }
    for (double[] group : groups) {
      if (group.length == 0) {
        throw new IllegalArgumentException("a group is empty");
      }
      for (double value : group) {
        if (!Double.isFinite(value)) {
          throw new IllegalArgumentException("values must be finite, was " + value);
        }
      }
    }
    return groups[0][0];
  }

  private static double mean(double[] group, double origin, CompensatedSum total) {
    CompensatedSum sum = new CompensatedSum();
    for (double value : group) {
      sum.add(value - origin);
      total.add(value - origin);
    }
    return sum.value() / group.length;
  }
}
