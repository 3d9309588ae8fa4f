package evenpair.statistics;

import java.util.Arrays;
import java.util.Optional;

/**
 * Capability of values that are not normal, by the percentiles that hold what 6σ holds of normal
 * ones: P_p = (U − L)/(X₉₉.₈₆₅ − X₀.₁₃₅), P_pU = (U − X₅₀)/(X₉₉.₈₆₅ − X₅₀), P_pL = (X₅₀ − L)/(X₅₀ −
 * X₀.₁₃₅). Source: ISO 22514-2 (from memory). Percentiles here are those of the sample itself
 * ({@link Quantiles}); no distribution is assumed, which takes many units.
 *
 * @param low X₀.₁₃₅
 * @param middle X₅₀
 * @param high X₉₉.₈₆₅
 */
public record PercentileCapability(double low, double middle, double high) {
  private static final double TAIL = 0.00135;

  /** ⌈1/0.00135⌉: with fewer, the outer percentiles are hardly more than the extreme values. */
  public static final int LEAST = Quantiles.unitsNeeded(TAIL);

  /**
   * @throws IllegalArgumentException unless the percentiles rise
   */
  public PercentileCapability {
    if (!(low < middle && middle < high)) {
      throw new IllegalArgumentException(
          "percentiles must rise: %s, %s, %s".formatted(low, middle, high));
    }
  }

  /**
   * @param values any order, finite
   */
  public static Finding<PercentileCapability> of(double... values) {
    if (values.length < LEAST) {
      return new Finding.NotEnough<>(Finding.Lack.UNITS, values.length, LEAST);
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    double low = Quantiles.ofSorted(sorted, sorted.length, TAIL);
    double middle = Quantiles.ofSorted(sorted, sorted.length, 0.5);
    double high = Quantiles.ofSorted(sorted, sorted.length, 1 - TAIL);
    return low < middle && middle < high
        ? new Finding.Found<>(new PercentileCapability(low, middle, high))
        : new Finding.NotEnough<>(Finding.Lack.SPREAD, 1, 3);
  }

  /**
   * @return P_p; empty with one limit only
   */
  public Optional<Double> spread(SpecifiedLimits limits) {
    return limits.lower().isEmpty() || limits.upper().isEmpty()
        ? Optional.empty()
        : Optional.of((limits.upper().getAsDouble() - limits.lower().getAsDouble()) / (high - low));
  }

  /**
   * @return P_pL; empty without a lower limit
   */
  public Optional<Double> below(SpecifiedLimits limits) {
    return limits.lower().isEmpty()
        ? Optional.empty()
        : Optional.of((middle - limits.lower().getAsDouble()) / (middle - low));
  }

  /**
   * @return P_pU; empty without an upper limit
   */
  public Optional<Double> above(SpecifiedLimits limits) {
    return limits.upper().isEmpty()
        ? Optional.empty()
        : Optional.of((limits.upper().getAsDouble() - middle) / (high - middle));
  }

  /**
   * @return P_pk: the lesser of the two, or the only one
   */
  public double nearest(SpecifiedLimits limits) {
    return Math.min(
        below(limits).orElse(Double.POSITIVE_INFINITY),
        above(limits).orElse(Double.POSITIVE_INFINITY));
  }
}
