package evenpair.statistics;

import java.util.OptionalDouble;

/**
 * What is allowed: between two limits, or on one side of one.
 *
 * @param lower least value allowed; empty if any is
 * @param upper largest value allowed; empty if any is
 */
public record SpecifiedLimits(OptionalDouble lower, OptionalDouble upper) {
  /**
   * @throws IllegalArgumentException if both are empty or one is not finite or they stand the wrong
   *     way round
   */
  public SpecifiedLimits {
    if (!Double.isFinite(lower.orElse(0)) || !Double.isFinite(upper.orElse(0))) {
      throw new IllegalArgumentException("limits must be finite: " + lower + ", " + upper);
    }
    if (lower.isEmpty() && upper.isEmpty()) {
      throw new IllegalArgumentException("there must be one limit at least");
    }
    if (lower.isPresent() && upper.isPresent() && !(lower.getAsDouble() < upper.getAsDouble())) {
      throw new IllegalArgumentException("the lower limit must lie below: " + lower + ", " + upper);
    }
  }

  public static SpecifiedLimits between(double lower, double upper) {
    return new SpecifiedLimits(OptionalDouble.of(lower), OptionalDouble.of(upper));
  }

  public static SpecifiedLimits atLeast(double lower) {
    return new SpecifiedLimits(OptionalDouble.of(lower), OptionalDouble.empty());
  }

  public static SpecifiedLimits atMost(double upper) {
    return new SpecifiedLimits(OptionalDouble.empty(), OptionalDouble.of(upper));
  }

  /**
   * @return true if the value is not allowed
   */
  public boolean exclude(double value) {
    return (lower.isPresent() && value < lower.getAsDouble())
        || (upper.isPresent() && value > upper.getAsDouble());
  }
}
