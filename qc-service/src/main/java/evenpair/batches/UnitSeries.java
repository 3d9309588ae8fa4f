package evenpair.batches;

import evenpair.statistics.SpecifiedLimits;
import java.util.Arrays;

/**
 * One quantity of every unit that has curves, in production order.
 *
 * @param region null for a quantity of no region
 * @param channel null for a quantity of the pair
 * @param values dB; NaN for a unit whose curve lacks a point that it takes
 * @param limits what the limit set allows, dB
 */
record UnitSeries(
    Quantity quantity, String region, String channel, double[] values, SpecifiedLimits limits) {
  /**
   * @return the values without the absent ones
   */
  double[] present() {
    return Arrays.stream(values).filter(Double::isFinite).toArray();
  }
}
