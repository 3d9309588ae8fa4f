package evenpair.batches;

import evenpair.statistics.Description;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;

/**
 * Whether a line ran steadily while the units of a proposal were made: a mean chart of consecutive
 * groups of units, for the level and for the mean deviation of every region. Limits are the mean of
 * all ± 3 standard errors of a group's mean, from the spread inside the groups.
 */
final class SteadyLine {
  /** Common practice of a control chart; fewer units make fewer groups. */
  private static final int MOST_GROUPS = 25;

  private static final int FEWEST_IN_A_GROUP = 4;
  private static final int FEWEST_GROUPS = 5;
  private static final double LIMIT_IN_ERRORS = 3;

  private SteadyLine() {}

  /**
   * A chart that signals.
   *
   * @param region null for the level
   * @param group the first group outside, 1 upwards
   * @param groups of the chart
   * @param offDb how far its mean lies from the mean of all
   */
  record Signal(String region, int group, int groups, double offDb) {
    Map<String, Object> values() {
      return region == null
          ? Map.of("group", group, "groups", groups, "off", offDb)
          : Map.of("region", region, "group", group, "groups", groups, "off", offDb);
    }
  }

  /**
   * @param order rows in production order
   * @return empty where nothing signals, or there are too few units for a chart
   */
  static List<Signal> look(LimitSet set, PairTable table, int[] order) {
    List<Signal> signals = new ArrayList<>();
    chart(null, order, row -> both(table, row)).ifPresent(signals::add);
    for (Region region : set.regions()) {
      chart(region.name(), order, row -> mean(table, row, region)).ifPresent(signals::add);
    }
    return signals;
  }

  private static double both(PairTable table, int row) {
    return (table.alignment(row, Channel.LEFT) + table.alignment(row, Channel.RIGHT)) / 2;
  }

  private static double mean(PairTable table, int row, Region region) {
    double sum = 0;
    for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
      sum += table.deviation(row, Channel.LEFT, i) + table.deviation(row, Channel.RIGHT, i);
    }
    return sum / (2 * region.band().points());
  }

  private static Optional<Signal> chart(String region, int[] order, IntToDoubleFunction value) {
    double[] values = Arrays.stream(order).mapToDouble(value).filter(Double::isFinite).toArray();
    int size = Math.max(FEWEST_IN_A_GROUP, values.length / MOST_GROUPS);
    int groups = values.length / size;
    if (groups < FEWEST_GROUPS) {
      return Optional.empty();
    }
    double[][] parts =
        IntStream.range(0, groups)
            .mapToObj(g -> Arrays.copyOfRange(values, g * size, (g + 1) * size))
            .toArray(double[][]::new);
    double variance =
        Arrays.stream(parts)
            .mapToDouble(part -> Description.of(part).sd())
            .map(sd -> sd * sd)
            .average()
            .orElseThrow();
    double mean = Description.of(values).mean();
    double reach = LIMIT_IN_ERRORS * Math.sqrt(variance / size);
    return IntStream.range(0, groups)
        .filter(g -> Math.abs(Description.of(parts[g]).mean() - mean) > reach)
        .mapToObj(g -> new Signal(region, g + 1, groups, Description.of(parts[g]).mean() - mean))
        .findFirst();
  }
}
