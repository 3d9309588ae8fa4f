package evenpair.stations;

import evenpair.acoustics.Grid;
import evenpair.statistics.GaugeResult;
import evenpair.statistics.GaugeTable;
import evenpair.statistics.OneWayAnova;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.function.ToDoubleFunction;

/** A gauge study's analysis as the API says it. Pure. */
final class GaugeNumbers {
  private GaugeNumbers() {}

  static GaugeViews.Analysis view(GaugeAnalysis analysis, LimitSet set, double poolAbove) {
    return new GaugeViews.Analysis(
        method(poolAbove),
        set.version(),
        GaugeResult.USUAL_NDC_FACTOR,
        analysis.regions().stream()
            .map(
                means ->
                    new GaugeViews.Row(
                        means.region().name(),
                        means.quantity(),
                        means.result().map(GaugeNumbers::view).orElse(null)))
            .toList(),
        numbers(analysis),
        Grid.frequencies(),
        view(analysis.level().get(Channel.LEFT)),
        view(analysis.level().get(Channel.RIGHT)),
        view(analysis.match()));
  }

  private static String method(double poolAbove) {
    return String.format(
        Locale.ROOT,
        "Crossed two-way analysis of variance, random effects, by expected mean squares; interaction pooled when its p is above"
            + " %s; components below 0 taken for 0.",
        poolAbove);
  }

  private static List<GaugeViews.Row> numbers(GaugeAnalysis analysis) {
    List<GaugeViews.Row> rows = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      GaugeResult offset = analysis.offset().get(channel);
      rows.add(
          new GaugeViews.Row(
              null, "offset-" + channel.word(), offset == null ? null : view(offset)));
    }
    rows.add(
        new GaugeViews.Row(
            null, "balance", analysis.balance().map(GaugeNumbers::view).orElse(null)));
    return rows;
  }

  static GaugeViews.Result view(GaugeResult result) {
    return new GaugeViews.Result(
        result.pooled(),
        finite(result.table().interactionP()),
        result.ev(),
        result.av(),
        Math.sqrt(result.interactionVariance()),
        result.grr(),
        result.pv(),
        result.tv(),
        finite(result.grrPercent()),
        finite(result.contributionPercent(result.grrVariance())),
        finite(result.ndc(GaugeResult.USUAL_NDC_FACTOR)),
        result.takenForZero().stream()
            .map(component -> component.name().toLowerCase(Locale.ROOT))
            .sorted()
            .toList(),
        table(result.table()));
  }

  private static List<GaugeViews.Source> table(GaugeTable table) {
    return List.of(
        source("part", table.part()),
        source("appraiser", table.appraiser()),
        source("interaction", table.interaction()),
        source("repeat", table.repeat()));
  }

  private static GaugeViews.Source source(String name, OneWayAnova.Source source) {
    return new GaugeViews.Source(name, source.freedom(), source.squares(), source.mean());
  }

  private static GaugeViews.ByFrequency view(GaugeResult[] results) {
    return new GaugeViews.ByFrequency(
        each(results, GaugeResult::ev),
        each(results, GaugeResult::reproducibility),
        each(results, GaugeResult::grr),
        each(results, GaugeResult::pv),
        each(results, GaugeResult::grrPercent),
        each(results, result -> result.ndc(GaugeResult.USUAL_NDC_FACTOR)));
  }

  /** NaN, an absent point, where there is no result or no finite number. */
  private static double[] each(GaugeResult[] results, ToDoubleFunction<GaugeResult> quantity) {
    return Arrays.stream(results)
        .mapToDouble(result -> result == null ? Double.NaN : quantity.applyAsDouble(result))
        .map(value -> Double.isInfinite(value) ? Double.NaN : value)
        .toArray();
  }

  private static Double finite(double value) {
    return Double.isFinite(value) ? value : null;
  }
}
