package evenpair.batches;

import evenpair.batches.StatisticsJson.About;
import evenpair.batches.StatisticsJson.StationComparison;
import evenpair.batches.StatisticsJson.StationDifference;
import evenpair.batches.StatisticsJson.StationMean;
import evenpair.batches.StatisticsJson.StationRow;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.statistics.Description;
import evenpair.statistics.Finding;
import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import evenpair.statistics.GroupDifferences;
import evenpair.statistics.GroupDifferences.Difference;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/** Whether the stations of a batch read alike: each quantity by one-way analysis of variance. */
final class StationFigures {
  private static final Set<Quantity> COMPARED =
      EnumSet.of(Quantity.LEVEL, Quantity.BALANCE, Quantity.REGION_MEAN, Quantity.DIFFERENCE_MEAN);

  private final StatisticsWords words;
  private final FirstPass units;
  private final UnitQuantities quantities;
  private final About about;

  StationFigures(StatisticsWords words, FirstPass units, UnitQuantities quantities, About about) {
    this.words = words;
    this.units = units;
    this.quantities = quantities;
    this.about = about;
  }

  StationComparison compared() {
    List<String> all = units.drawn().stream().map(BatchUnit::station).distinct().sorted().toList();
    List<String> stations =
        all.stream()
            .filter(
                station ->
                    units.drawn().stream().filter(u -> u.station().equals(station)).count()
                        >= GroupDifferences.LEAST_VALUES)
            .toList();
    List<String> notes = new ArrayList<>();
    if (stations.size() < all.size()) {
      List<String> few = new ArrayList<>(all);
      few.removeAll(stations);
      notes.add(words.text("stations.note.few", Map.of("stations", String.join(", ", few))));
    }
    if (stations.size() < 2) {
      return new StationComparison(
          about,
          List.of(),
          words.text("stations.method"),
          notes,
          CapabilityFigures.missing(words, new NotEnough<>(Lack.GROUPS, stations.size(), 2)));
    }
    List<UnitQuantities.Key> keys = quantities.keys(COMPARED);
    List<StationRow> rows =
        keys.stream().map(key -> row(quantities.of(key), stations, keys.size())).toList();
    return new StationComparison(about, rows, words.text("stations.method"), notes, null);
  }

  private StationRow row(UnitSeries series, List<String> stations, int comparisons) {
    double[][] groups =
        stations.stream().map(station -> values(series, station)).toArray(double[][]::new);
    Finding<GroupDifferences> found =
        GroupDifferences.of(CapabilityFigures.CONFIDENCE, comparisons, groups);
    GroupDifferences told = found.told().orElse(null);
    return new StationRow(
        series.quantity().word(),
        series.region(),
        series.channel(),
        words.name(series.quantity(), series.region(), series.channel()),
        told == null ? null : Rounded.orNull(told.table().f()),
        told == null ? null : (Double) told.table().p(),
        means(stations, groups),
        told == null
            ? List.of()
            : told.differences().stream().map(d -> difference(series, stations, d)).toList(),
        found instanceof NotEnough<GroupDifferences> lack
            ? CapabilityFigures.missing(words, lack)
            : null);
  }

  private double[] values(UnitSeries series, String station) {
    return IntStream.range(0, series.values().length)
        .filter(i -> units.drawn().get(i).station().equals(station))
        .mapToDouble(i -> series.values()[i])
        .filter(Double::isFinite)
        .toArray();
  }

  private static List<StationMean> means(List<String> stations, double[][] groups) {
    return IntStream.range(0, groups.length)
        .mapToObj(
            g -> {
              Description found = Description.of(groups[g]);
              return new StationMean(
                  stations.get(g),
                  groups[g].length,
                  Rounded.orNull(found.mean()),
                  Rounded.orNull(found.sd()));
            })
        .toList();
  }

  private StationDifference difference(
      UnitSeries series, List<String> stations, Difference difference) {
    boolean clear = difference.interval().excludes(0);
    boolean higher = difference.meanDifference() > 0;
    String upper = stations.get(higher ? difference.first() : difference.second());
    String lower = stations.get(higher ? difference.second() : difference.first());
    double[] ends = {difference.interval().lower(), difference.interval().upper()};
    double[] size = higher ? ends : new double[] {-ends[1], -ends[0]};
    Map<String, Object> facts = new HashMap<>();
    facts.put("name", words.name(series.quantity(), series.region(), series.channel()));
    facts.put("upper", upper);
    facts.put("lower", lower);
    facts.put("difference", StatisticsWords.signed(Math.abs(difference.meanDifference())));
    facts.put("from", StatisticsWords.signed(size[0]));
    facts.put("to", StatisticsWords.signed(size[1]));
    return new StationDifference(
        stations.get(difference.first()),
        stations.get(difference.second()),
        Rounded.of(difference.meanDifference()),
        Rounded.of(ends),
        clear,
        words.text(clear ? "stations.differ" : "stations.alike", facts));
  }
}
