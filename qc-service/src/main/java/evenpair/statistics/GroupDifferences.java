package evenpair.statistics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.apache.commons.math3.distribution.TDistribution;

/**
 * Groups compared with each other: the one-way analysis of variance and, for each two groups, the
 * difference of their means with the interval m_a − m_b ± t·s_within·√(1/n_a + 1/n_b). t is the
 * quantile at 1 − α/(2m) with the freedom inside the groups, so that all m intervals together hold
 * at least at 1 − α (Bonferroni's inequality).
 *
 * @param table analysis of variance
 * @param differences for each two groups, in order
 */
public record GroupDifferences(OneWayAnova table, List<Difference> differences) {
  /** Each group needs this many values to be looked at. */
  public static final int LEAST_VALUES = 2;

  /**
   * @param first place of a group
   * @param second place of another, behind it
   * @param meanDifference first − second
   * @param interval simultaneous
   */
  public record Difference(int first, int second, double meanDifference, Bounds interval) {}

  /**
   * @param confidence of all intervals of this comparison together, between 0 and 1
   * @param comparisons how many such comparisons are made side by side; the intervals widen so that
   *     all of them hold together. 1 upwards
   * @param groups two values at least in each
   */
  public static Finding<GroupDifferences> of(
      double confidence, int comparisons, double[]... groups) {
    int usable = (int) Arrays.stream(groups).filter(g -> g.length >= LEAST_VALUES).count();
    if (usable < 2 || usable < groups.length) {
      return new Finding.NotEnough<>(Finding.Lack.GROUPS, usable, Math.max(2, groups.length));
    }
    OneWayAnova table = OneWayAnova.of(groups);
    if (!(table.within().squares() > 0)) {
      return new Finding.NotEnough<>(Finding.Lack.SPREAD, 1, 2);
    }
    int pairs = groups.length * (groups.length - 1) / 2;
    double tail = (1 - confidence) / (2.0 * pairs * comparisons);
    double t =
        new TDistribution(null, table.within().freedom()).inverseCumulativeProbability(1 - tail);
    double[] means = Arrays.stream(groups).mapToDouble(g -> Description.of(g).mean()).toArray();
    List<Difference> differences = new ArrayList<>();
    for (int a = 0; a < groups.length; a++) {
      for (int b = a + 1; b < groups.length; b++) {
        double between = means[a] - means[b];
        double half =
            t * table.sdWithin() * Math.sqrt(1.0 / groups[a].length + 1.0 / groups[b].length);
        differences.add(new Difference(a, b, between, new Bounds(between - half, between + half)));
      }
    }
    return new Finding.Found<>(new GroupDifferences(table, List.copyOf(differences)));
  }
}
