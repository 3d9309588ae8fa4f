package evenpair.statistics;

import java.util.Optional;

/**
 * How a spread fits between limits: C_p = (U − L)/6σ, C_pl = (x̄ − L)/3σ, C_pu = (U − x̄)/3σ, C_pk
 * the lesser of the two (or the only one), C_pm = (U − L)/(6·√(σ² + (x̄ − T)²)). With the spread
 * from one unit to the next they are called C, with the whole spread P. Source: ISO 22514-2 (from
 * memory). They speak of normal values only.
 *
 * @param limits what is allowed
 * @param mean x̄
 * @param sigma σ, above 0
 * @param n values behind the mean
 * @param freedom degrees of freedom behind σ
 */
public record Capability(SpecifiedLimits limits, double mean, double sigma, int n, double freedom) {
  /**
   * @throws IllegalArgumentException if there is no spread
   */
  public Capability {
    if (!(sigma > 0) || !Double.isFinite(sigma) || !Double.isFinite(mean) || !(freedom > 0)) {
      throw new IllegalArgumentException(
          "capability needs a spread, was %s ± %s".formatted(mean, sigma));
    }
  }

  /**
   * @return C_p; empty with one limit only
   */
  public Optional<CapabilityIndex> spread() {
    return range().map(range -> new CapabilityIndex(range / (6 * sigma), true, n, freedom));
  }

  /**
   * @return C_pl; empty without a lower limit
   */
  public Optional<CapabilityIndex> below() {
    return limits.lower().isEmpty()
        ? Optional.empty()
        : Optional.of(oneSided(mean - limits.lower().getAsDouble()));
  }

  /**
   * @return C_pu; empty without an upper limit
   */
  public Optional<CapabilityIndex> above() {
    return limits.upper().isEmpty()
        ? Optional.empty()
        : Optional.of(oneSided(limits.upper().getAsDouble() - mean));
  }

  /**
   * @return C_pk
   */
  public CapabilityIndex nearest() {
    return below()
        .filter(low -> above().stream().noneMatch(high -> high.value() < low.value()))
        .or(this::above)
        .orElseThrow();
  }

  /**
   * @return C_pm; empty with one limit only
   */
  public Optional<Double> aboutTarget(double target) {
    double spread = Math.sqrt(sigma * sigma + (mean - target) * (mean - target));
    return range().map(range -> range / (6 * spread));
  }

  private Optional<Double> range() {
    return limits.lower().isEmpty() || limits.upper().isEmpty()
        ? Optional.empty()
        : Optional.of(limits.upper().getAsDouble() - limits.lower().getAsDouble());
  }

  private CapabilityIndex oneSided(double distance) {
    return new CapabilityIndex(distance / (3 * sigma), false, n, freedom);
  }
}
