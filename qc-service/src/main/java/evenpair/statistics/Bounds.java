package evenpair.statistics;

/**
 * Two-sided confidence interval of a quantity that may have any value.
 *
 * @param lower lower end
 * @param upper upper end, not below the lower one
 */
public record Bounds(double lower, double upper) {
  /**
   * @throws IllegalArgumentException if an end is not finite or they stand the wrong way round
   */
  public Bounds {
    if (!Double.isFinite(lower) || !Double.isFinite(upper) || lower > upper) {
      throw new IllegalArgumentException("no interval: " + lower + " … " + upper);
    }
  }

  /**
   * @return true if the value lies outside
   */
  public boolean excludes(double value) {
    return value < lower || value > upper;
  }
}
