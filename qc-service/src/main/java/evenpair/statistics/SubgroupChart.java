package evenpair.statistics;

import java.util.Arrays;

/**
 * Means and standard deviations of subgroups of equal size (X̄ and S chart). σ̂ = S̄/c₄; limits of
 * the means x̿ ± 3·σ̂/√n, of the standard deviations B₃·S̄ and B₄·S̄. Source: ISO 7870-2 (from
 * memory).
 *
 * @param means with their limits
 * @param deviations with their limits
 * @param sigma S̄/c₄, the spread inside a subgroup
 */
public record SubgroupChart(ControlChart means, ControlChart deviations, double sigma) {
  /**
   * @param values in production order; a last group that is not full is left out
   * @param size values in a subgroup, 2 upwards
   * @param baseline how many groups, from the first, set the limits; all that there are if fewer
   */
  public static Finding<SubgroupChart> of(double[] values, int size, int baseline) {
    int groups = values.length / size;
    if (groups < ControlChart.LEAST_POINTS) {
      return new Finding.NotEnough<>(
          Finding.Lack.UNITS, values.length, size * ControlChart.LEAST_POINTS);
    }
    double[] means = new double[groups];
    double[] deviations = new double[groups];
    for (int g = 0; g < groups; g++) {
      Description group = Description.of(Arrays.copyOfRange(values, g * size, (g + 1) * size));
      means[g] = group.mean();
      deviations[g] = group.sd();
    }
    int used = Math.min(groups, Math.max(baseline, ControlChart.LEAST_POINTS));
    ChartConstants constants = ChartConstants.of(size);
    double centre = Arrays.stream(means).limit(used).average().orElseThrow();
    double deviation = Arrays.stream(deviations).limit(used).average().orElseThrow();
    if (!(deviation > 0)) {
      return new Finding.NotEnough<>(Finding.Lack.SPREAD, 1, 2);
    }
    double half = constants.a3() * deviation;
    return new Finding.Found<>(
        new SubgroupChart(
            ControlChart.level(means, centre, centre - half, centre + half),
            ControlChart.level(
                deviations, deviation, constants.b3() * deviation, constants.b4() * deviation),
            deviation / constants.c4()));
  }
}
