package evenpair.batches;

import evenpair.batches.StatisticsJson.Alternative;
import evenpair.batches.StatisticsJson.CapabilityRow;
import evenpair.batches.StatisticsJson.Holding;
import evenpair.batches.StatisticsJson.Index;
import evenpair.batches.StatisticsJson.Missing;
import evenpair.batches.StatisticsJson.Normality;
import evenpair.statistics.AndersonDarling;
import evenpair.statistics.Capability;
import evenpair.statistics.CapabilityIndex;
import evenpair.statistics.CountedCapability;
import evenpair.statistics.Description;
import evenpair.statistics.Finding;
import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import evenpair.statistics.IndividualsChart;
import evenpair.statistics.PercentileCapability;
import evenpair.statistics.Proportion;
import evenpair.statistics.SpecifiedLimits;
import evenpair.statistics.ToleranceFactor;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * How a batch fits its limits, row by row, with the number that may be quoted: indices of normal
 * values, or where the values cannot be normal, percentiles or plain counting.
 */
final class CapabilityFigures {
  /** Fewer units leave an interval as wide as the index itself. Common practice, no source. */
  static final int LEAST_UNITS = 10;

  static final double CONFIDENCE = 0.95;

  /** Below this chance values are not taken for normal. */
  static final double NORMALITY_P = 0.05;

  private static final double SHARE = 0.95;
  private static final Set<Quantity> WHOLE =
      EnumSet.of(Quantity.LEVEL, Quantity.BALANCE, Quantity.REGION_MEAN, Quantity.DIFFERENCE_MEAN);

  private final StatisticsWords words;

  CapabilityFigures(StatisticsWords words) {
    this.words = words;
  }

  /**
   * @return for each region and channel its mean and its worst point, the poorer edge of the window
   */
  List<CapabilityRow> rows(UnitQuantities quantities) {
    List<CapabilityRow> rows = new ArrayList<>();
    Set<Quantity> wanted = EnumSet.copyOf(WHOLE);
    wanted.add(Quantity.MARGIN);
    wanted.add(Quantity.MATCH_MARGIN);
    for (UnitQuantities.Key key : quantities.keys(wanted)) {
      rows.add(
          key.quantity() == Quantity.MARGIN
              ? poorer(
                  row(quantities.of(at(key, Quantity.BELOW_UPPER))),
                  row(quantities.of(at(key, Quantity.ABOVE_LOWER))))
              : row(quantities.of(key)));
    }
    return rows;
  }

  private static UnitQuantities.Key at(UnitQuantities.Key key, Quantity quantity) {
    return new UnitQuantities.Key(quantity, key.region(), key.channel());
  }

  private static CapabilityRow poorer(CapabilityRow above, CapabilityRow below) {
    if (above.missing() != null || below.missing() != null) {
      return above.missing() != null ? below : above;
    }
    return above.ppk().value() <= below.ppk().value() ? above : below;
  }

  private CapabilityRow row(UnitSeries series) {
    double[] values = series.present();
    return found(series, values).told().orElseGet(() -> without(series, values));
  }

  private Finding<CapabilityRow> found(UnitSeries series, double[] values) {
    return enough(values).map(all -> row(series, values, all));
  }

  private static Finding<Description> enough(double[] values) {
    if (values.length < LEAST_UNITS) {
      return new NotEnough<>(Lack.UNITS, values.length, LEAST_UNITS);
    }
    Description all = Description.of(values);
    return all.sd() > 0 && IndividualsChart.of(values).sigma() > 0
        ? new Finding.Found<>(all)
        : new NotEnough<>(Lack.SPREAD, 1, 2);
  }

  private CapabilityRow row(UnitSeries series, double[] values, Description all) {
    SpecifiedLimits limits = series.limits();
    int n = values.length;
    double within = IndividualsChart.of(values).sigma();
    Capability shortTerm =
        new Capability(limits, all.mean(), within, n, IndividualsChart.freedom(n));
    Capability whole = new Capability(limits, all.mean(), all.sd(), n, n - 1.0);
    AndersonDarling normality = AndersonDarling.of(values).told().orElseThrow();
    boolean normal = normality.p() >= NORMALITY_P;
    Alternative alternative = normal ? null : alternative(limits, values);
    return new CapabilityRow(
        series.quantity().word(),
        series.region(),
        series.channel(),
        words.name(series.quantity(), series.region(), series.channel()),
        n,
        end(limits, true),
        end(limits, false),
        Rounded.of(all.mean()),
        Rounded.of(within),
        Rounded.of(all.sd()),
        shortTerm.spread().map(CapabilityFigures::index).orElse(null),
        index(shortTerm.nearest()),
        whole.spread().map(CapabilityFigures::index).orElse(null),
        index(whole.nearest()),
        new Normality(Rounded.of(normality.aSquared()), normality.p(), !normal),
        alternative,
        holding(values, all, normal),
        normal ? "normal" : alternative.method(),
        null);
  }

  private Alternative alternative(SpecifiedLimits limits, double[] values) {
    int outside = (int) Arrays.stream(values).filter(limits::exclude).count();
    Optional<PercentileCapability> percentiles = PercentileCapability.of(values).told();
    if (percentiles.isPresent()) {
      double ppk = Rounded.of(percentiles.get().nearest(limits));
      return new Alternative(
          "percentiles",
          ppk,
          null,
          outside,
          words.text("alternative.percentiles", Map.of("ppk", two(ppk))));
    }
    double least = CountedCapability.atLeast(new Proportion(outside, values.length), CONFIDENCE);
    Map<String, Object> facts =
        Map.of(
            "outside",
            outside,
            "n",
            values.length,
            "least",
            Double.isInfinite(least) ? "0" : two(least),
            "need",
            PercentileCapability.LEAST);
    return new Alternative(
        "counting",
        null,
        Double.isInfinite(least) ? null : Rounded.of(least),
        outside,
        words.text("alternative.counting", facts));
  }

  /** Normal values by x̄ ± k·s; others by their extremes, once there are enough of them. */
  private static Holding holding(double[] values, Description all, boolean normal) {
    if (normal) {
      double k = Factors.twoSided(values.length, SHARE, CONFIDENCE);
      return new Holding(
          SHARE,
          CONFIDENCE,
          Rounded.of(all.mean() - k * all.sd()),
          Rounded.of(all.mean() + k * all.sd()),
          "normal");
    }
    if (values.length < ToleranceFactor.unitsForBoth(SHARE, CONFIDENCE)) {
      return null;
    }
    return new Holding(
        SHARE,
        CONFIDENCE,
        Rounded.of(Arrays.stream(values).min().orElseThrow()),
        Rounded.of(Arrays.stream(values).max().orElseThrow()),
        "extremes");
  }

  private CapabilityRow without(UnitSeries series, double[] values) {
    NotEnough<Description> lack = (NotEnough<Description>) enough(values);
    return new CapabilityRow(
        series.quantity().word(),
        series.region(),
        series.channel(),
        words.name(series.quantity(), series.region(), series.channel()),
        values.length,
        end(series.limits(), true),
        end(series.limits(), false),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        missing(words, lack));
  }

  static Missing missing(StatisticsWords words, NotEnough<?> lack) {
    return new Missing(
        lack.lack().name().toLowerCase(Locale.ROOT), lack.have(), lack.need(), words.lacking(lack));
  }

  private static Double end(SpecifiedLimits limits, boolean lower) {
    var end = lower ? limits.lower() : limits.upper();
    return end.isEmpty() ? null : (Double) Rounded.of(end.getAsDouble());
  }

  private static Index index(CapabilityIndex found) {
    return new Index(
        Rounded.of(found.value()),
        Rounded.of(
            new double[] {found.interval(CONFIDENCE).lower(), found.interval(CONFIDENCE).upper()}),
        Rounded.of(found.atLeast(CONFIDENCE)));
  }

  private static String two(double value) {
    return String.format(Locale.ROOT, "%.2f", value);
  }
}
