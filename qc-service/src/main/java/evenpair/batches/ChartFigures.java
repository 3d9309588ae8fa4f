package evenpair.batches;

import evenpair.batches.StatisticsJson.About;
import evenpair.batches.StatisticsJson.ChartPanel;
import evenpair.batches.StatisticsJson.ChartPoint;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.batches.StatisticsJson.Choice;
import evenpair.batches.StatisticsJson.Missing;
import evenpair.batches.StatisticsJson.Signal;
import evenpair.batches.StatisticsJson.UnitLink;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.statistics.ControlChart;
import evenpair.statistics.CusumChart;
import evenpair.statistics.EwmaChart;
import evenpair.statistics.Finding;
import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import evenpair.statistics.IndividualsChart;
import evenpair.statistics.ProportionChart;
import evenpair.statistics.RunRule;
import evenpair.statistics.SubgroupChart;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Control charts of a batch over production order. Limits come from the units that passed: what
 * failed is plotted, but a dead driver says nothing of how steady the line is.
 */
final class ChartFigures {
  static final double LAMBDA = 0.2;
  static final double EWMA_WIDTH = 3;

  /** In standard deviations; finds a shift of one soonest. Common practice, no source. */
  static final double CUSUM_K = 0.5;

  static final double CUSUM_H = 5;
  private static final int SUBGROUP = 5;
  private static final int SHARE_GROUP = 10;
  private static final Set<Quantity> CHARTED =
      EnumSet.complementOf(EnumSet.of(Quantity.BELOW_UPPER, Quantity.ABOVE_LOWER));

  private final StatisticsWords words;
  private final FirstPass units;
  private final UnitQuantities quantities;
  private final About about;

  ChartFigures(StatisticsWords words, FirstPass units, UnitQuantities quantities, About about) {
    this.words = words;
    this.units = units;
    this.quantities = quantities;
    this.about = about;
  }

  /** What a kind of chart came to, before it is dressed. */
  private record Drawn(
      Double sigma,
      int baseline,
      int subgroup,
      List<ChartPoint> points,
      List<ChartPanel> panels,
      List<Signal> signals) {}

  Charts chart(ChartRequest request) {
    ChartKind kind = request.wantedKind();
    UnitQuantities.Key key = key(request);
    UnitSeries series =
        quantities
            .find(key)
            .orElseThrow(
                () ->
                    ChartRequest.refusal(
                        "region", request.region(), "a region of the limit set with such a limit"));
    List<RunRule> rules = request.western() ? RunRule.WESTERN_ELECTRIC : RunRule.NELSON;
    Finding<Drawn> drawn =
        switch (kind) {
          case INDIVIDUALS -> single(series, request).map(single -> individuals(single, rules));
          case EWMA -> single(series, request).map(this::ewma);
          case CUSUM -> single(series, request).map(this::cusum);
          case XBAR_S -> subgroups(series, request, rules);
          case P -> shares(request);
        };
    return dressed(kind, key, drawn);
  }

  private UnitQuantities.Key key(ChartRequest request) {
    Quantity quantity = request.wantedQuantity();
    List<UnitQuantities.Key> known = quantities.keys(Set.of(quantity));
    String region =
        !quantity.ofRegion()
            ? null
            : ChartRequest.blank(request.region()) && !known.isEmpty()
                ? known.get(known.size() - 1).region()
                : request.region();
    String channel =
        !quantity.ofChannel()
            ? null
            : ChartRequest.blank(request.channel()) ? "left" : request.channel();
    return new UnitQuantities.Key(quantity, region, channel);
  }

  private Charts dressed(ChartKind kind, UnitQuantities.Key key, Finding<Drawn> drawn) {
    Missing missing =
        drawn instanceof NotEnough<Drawn> lack ? CapabilityFigures.missing(words, lack) : null;
    Drawn found = drawn.told().orElse(new Drawn(null, 0, 0, List.of(), List.of(), List.of()));
    boolean share = kind == ChartKind.P;
    return new Charts(
        about,
        key.quantity().word(),
        key.region(),
        key.channel(),
        share
            ? words.text("quantity.failed")
            : words.name(key.quantity(), key.region(), key.channel()),
        share ? "1" : "dB",
        kind.word(),
        found.baseline(),
        found.subgroup(),
        found.sigma(),
        found.points(),
        found.panels(),
        found.signals(),
        words.text("chart.method." + kind.word()),
        List.of(words.text("chart.note.baseline")),
        missing,
        quantities.keys(CHARTED).stream()
            .map(
                k ->
                    new Choice(
                        k.quantity().word(),
                        k.region(),
                        k.channel(),
                        words.name(k.quantity(), k.region(), k.channel())))
            .toList());
  }

  /** Single values with what the passed units of the baseline say of centre and spread. */
  private record Single(
      double[] values, List<BatchUnit> shown, IndividualsChart base, int baseline) {}

  private Finding<Single> single(UnitSeries series, ChartRequest request) {
    int[] places =
        IntStream.range(0, series.values().length)
            .filter(i -> Double.isFinite(series.values()[i]))
            .toArray();
    List<BatchUnit> shown =
        Arrays.stream(places).mapToObj(place -> units.drawn().get(place)).toList();
    double[] values = Arrays.stream(places).mapToDouble(place -> series.values()[place]).toArray();
    int baseline = request.units(values.length);
    double[] passed =
        IntStream.range(0, baseline)
            .filter(i -> "PASS".equals(shown.get(i).verdict()))
            .mapToDouble(i -> values[i])
            .toArray();
    if (passed.length < ControlChart.LEAST_POINTS) {
      return new NotEnough<>(Lack.UNITS, passed.length, ControlChart.LEAST_POINTS);
    }
    IndividualsChart base = IndividualsChart.of(passed);
    return base.sigma() > 0
        ? new Finding.Found<>(new Single(values, shown, base, baseline))
        : new NotEnough<>(Lack.SPREAD, 1, 2);
  }

  private Drawn individuals(Single single, List<RunRule> rules) {
    ControlChart values = single.base().values(single.values());
    ControlChart ranges = single.base().movingRanges(single.values());
    List<Signal> signals = new ArrayList<>(signals(0, values, rules));
    int[] wide = Arrays.stream(ranges.outside()).map(i -> i + 1).toArray();
    add(signals, 1, RunRule.BEYOND_THREE, wide);
    double[] shifted = new double[single.values().length];
    shifted[0] = Double.NaN; // the first unit has none before it
    System.arraycopy(ranges.points(), 0, shifted, 1, ranges.points().length);
    double[] upper = new double[shifted.length];
    Arrays.fill(upper, single.base().movingRangeUpper());
    return drawn(
        single,
        List.of(
            panel("values", values),
            new ChartPanel(
                words.text("chart.panel.ranges"),
                List.of(Rounded.of(shifted)),
                Rounded.of(ranges.centre()),
                null,
                Rounded.of(upper))),
        signals);
  }

  private Drawn ewma(Single single) {
    ControlChart chart =
        EwmaChart.of(
            single.values(), single.base().mean(), single.base().sigma(), LAMBDA, EWMA_WIDTH);
    List<Signal> signals = new ArrayList<>();
    add(signals, 0, RunRule.BEYOND_THREE, chart.outside());
    return drawn(single, List.of(panel("ewma", chart)), signals);
  }

  private Drawn cusum(Single single) {
    double sigma = single.base().sigma();
    CusumChart chart =
        CusumChart.of(single.values(), single.base().mean(), CUSUM_K * sigma, CUSUM_H * sigma);
    double[] low = Arrays.stream(chart.low()).map(value -> 0 - value).toArray();
    double[] upper = new double[low.length];
    Arrays.fill(upper, chart.limit());
    double[] lower = new double[low.length];
    Arrays.fill(lower, -chart.limit());
    List<Signal> signals = new ArrayList<>();
    for (CusumChart.Shift shift : chart.shifts()) {
      signals.add(
          new Signal(
              0,
              "beyond-h",
              words.text(
                  "chart.cusum-signal",
                  Map.of(
                      "first", single.shown().get(shift.signal()).serial(),
                      "began", single.shown().get(shift.began()).serial(),
                      "direction", words.text(shift.upwards() ? "higher" : "lower"))),
              IntStream.rangeClosed(shift.signal(), shift.last()).toArray()));
    }
    return drawn(
        single,
        List.of(
            new ChartPanel(
                words.text("chart.panel.cusum"),
                List.of(Rounded.of(chart.high()), Rounded.of(low)),
                0,
                Rounded.of(lower),
                Rounded.of(upper))),
        signals);
  }

  private Drawn drawn(Single single, List<ChartPanel> panels, List<Signal> signals) {
    List<ChartPoint> points =
        single.shown().stream()
            .map(unit -> new ChartPoint(unit.at(), List.of(link(unit))))
            .toList();
    return new Drawn(
        Rounded.of(single.base().sigma()), single.baseline(), 1, points, panels, signals);
  }

  private Finding<Drawn> subgroups(UnitSeries series, ChartRequest request, List<RunRule> rules) {
    int size = request.groupOf(SUBGROUP);
    int[] good =
        IntStream.range(0, series.values().length)
            .filter(i -> Double.isFinite(series.values()[i]))
            .filter(i -> "PASS".equals(units.drawn().get(i).verdict()))
            .toArray();
    double[] values = Arrays.stream(good).mapToDouble(place -> series.values()[place]).toArray();
    int baseline = request.units(values.length) / size;
    return SubgroupChart.of(values, size, baseline)
        .map(
            chart -> {
              List<Signal> signals = new ArrayList<>(signals(0, chart.means(), rules));
              add(signals, 1, RunRule.BEYOND_THREE, chart.deviations().outside());
              List<ChartPoint> points = new ArrayList<>();
              for (int g = 0; g < values.length / size; g++) {
                points.add(
                    group(
                        Arrays.stream(good, g * size, (g + 1) * size)
                            .mapToObj(place -> units.drawn().get(place))
                            .toList()));
              }
              int used = Math.min(points.size(), Math.max(baseline, ControlChart.LEAST_POINTS));
              return new Drawn(
                  Rounded.of(chart.sigma()),
                  used,
                  size,
                  points,
                  List.of(panel("means", chart.means()), panel("deviations", chart.deviations())),
                  signals);
            });
  }

  private Finding<Drawn> shares(ChartRequest request) {
    int size = request.groupOf(SHARE_GROUP);
    List<BatchUnit> all = units.units();
    int groups = all.size() / size;
    int[] failed = new int[groups];
    int[] sizes = new int[groups];
    List<ChartPoint> points = new ArrayList<>();
    for (int g = 0; g < groups; g++) {
      List<BatchUnit> members = all.subList(g * size, (g + 1) * size);
      failed[g] = (int) members.stream().filter(unit -> !"PASS".equals(unit.verdict())).count();
      sizes[g] = size;
      points.add(group(members));
    }
    if (groups < ControlChart.LEAST_POINTS) {
      return new NotEnough<>(Lack.UNITS, all.size(), size * ControlChart.LEAST_POINTS);
    }
    int baseline = Math.max(1, request.units(all.size()) / size);
    return ProportionChart.of(failed, sizes, baseline)
        .map(
            chart -> {
              List<Signal> signals = new ArrayList<>();
              add(signals, 0, RunRule.BEYOND_THREE, chart.outside());
              int used = Math.min(groups, Math.max(baseline, ControlChart.LEAST_POINTS));
              return new Drawn(null, used, size, points, List.of(panel("shares", chart)), signals);
            });
  }

  private ChartPanel panel(String title, ControlChart chart) {
    return new ChartPanel(
        words.text("chart.panel." + title),
        List.of(Rounded.of(chart.points())),
        Rounded.of(chart.centre()),
        Rounded.of(chart.lower()),
        Rounded.of(chart.upper()));
  }

  private List<Signal> signals(int panel, ControlChart chart, List<RunRule> rules) {
    double[] z = chart.inSigmas();
    List<Signal> signals = new ArrayList<>();
    rules.forEach(rule -> add(signals, panel, rule, rule.signals(z)));
    return signals;
  }

  private void add(List<Signal> signals, int panel, RunRule rule, int[] points) {
    if (points.length > 0) {
      String word = rule.name().toLowerCase(Locale.ROOT).replace('_', '-');
      signals.add(new Signal(panel, word, words.text("rule." + word), points));
    }
  }

  private static ChartPoint group(List<BatchUnit> members) {
    return new ChartPoint(members.get(0).at(), members.stream().map(ChartFigures::link).toList());
  }

  static UnitLink link(BatchUnit unit) {
    return new UnitLink(unit.inspection(), unit.serial(), unit.verdict());
  }
}
