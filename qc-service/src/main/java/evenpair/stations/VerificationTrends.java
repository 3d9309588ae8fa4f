package evenpair.stations;

import evenpair.stations.VerificationRow.RegionCheck;
import evenpair.statistics.IndividualsChart;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** How a reference unit's regions move from one verification to the next. Pure. */
final class VerificationTrends {
  /** Below that, limits say more of chance than of the station. Common practice, no source. */
  static final int LEAST_POINTS = 8;

  static final String METHOD =
      "Single values and moving ranges of region means: centre ± 3·mean moving range·√π/2.";

  private VerificationTrends() {}

  private record Key(
      UUID reference, String product, String tuning, String channel, String region) {}

  private record Value(VerificationRow row, double deviationDb) {}

  /**
   * @param newestFirst verifications, newest first
   * @param serials of the reference units by id
   * @return one trend for each certified curve, channel and region that was judged, points oldest
   *     first
   */
  static List<TrustViews.Trend> of(List<VerificationRow> newestFirst, Map<UUID, String> serials) {
    Map<Key, List<Value>> values = new LinkedHashMap<>();
    for (int i = newestFirst.size() - 1; i >= 0; i--) {
      VerificationRow row = newestFirst.get(i);
      for (RegionCheck check : row.regions()) {
        if (check.judged()) {
          values
              .computeIfAbsent(key(row, check), key -> new ArrayList<>())
              .add(new Value(row, check.deviationDb()));
        }
      }
    }
    return values.entrySet().stream()
        .map(entry -> trend(entry.getKey(), entry.getValue(), serials))
        .toList();
  }

  private static Key key(VerificationRow row, RegionCheck check) {
    return new Key(
        row.referenceUnitId(), row.product(), row.tuning(), check.channel().word(), check.region());
  }

  private static TrustViews.Trend trend(Key key, List<Value> values, Map<UUID, String> serials) {
    IndividualsChart chart =
        values.size() < LEAST_POINTS
            ? null
            : IndividualsChart.of(values.stream().mapToDouble(Value::deviationDb).toArray());
    return new TrustViews.Trend(
        key.product(),
        key.tuning(),
        serials.get(key.reference()),
        key.channel(),
        key.region(),
        values.get(values.size() - 1).row().limitDb(),
        chart == null ? null : view(chart, values.size()),
        chart == null
            ? "limits need " + LEAST_POINTS + " verifications; have " + values.size()
            : null,
        points(values, chart));
  }

  private static List<TrustViews.Point> points(List<Value> values, IndividualsChart chart) {
    List<TrustViews.Point> points = new ArrayList<>();
    for (int i = 0; i < values.size(); i++) {
      double value = values.get(i).deviationDb();
      points.add(
          new TrustViews.Point(
              values.get(i).row().getId(),
              values.get(i).row().provenance().measuredAt(),
              value,
              i == 0 ? null : Math.abs(value - values.get(i - 1).deviationDb()),
              chart == null ? null : chart.signals(value)));
    }
    return points;
  }

  static TrustViews.Chart view(IndividualsChart chart, int points) {
    return new TrustViews.Chart(
        chart.mean(), chart.lower(), chart.upper(), chart.movingRangeUpper(), points);
  }
}
