package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.BatchJson.Statistics;
import evenpair.batches.BatchJson.UnitCurves;
import evenpair.batches.BatchJson.Units;
import evenpair.batches.BatchJson.Window;
import evenpair.batches.BatchJson.Yield;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.statistics.Proportion;
import evenpair.statistics.Proportion.Interval;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;

/** Everything that is counted and averaged over one part of a batch. */
final class BatchFigures {
  private static final double CONFIDENCE = 0.95;

  private final Texts texts;
  private final Locale locale;

  BatchFigures(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  /**
   * @param links addresses of further figures of the same units, by name
   */
  Statistics statistics(String batch, BatchCurves curves, Map<String, String> links) {
    FirstPass units = FirstPass.of(curves);
    int passed = (int) units.units().stream().filter(unit -> "PASS".equals(unit.verdict())).count();
    int inspected = units.units().size();
    return new Statistics(
        batch,
        curves.product(),
        curves.tuning(),
        curves.limitSets(),
        new Units(inspected, passed, inspected - passed),
        shared(new Proportion(passed, inspected), "batch.yield-method"),
        shared(FinalPass.of(curves), "statistics.final-yield-method"),
        new ReasonRanking(texts, locale).of(units.units()),
        Grid.frequencies(),
        Rounded.of(curves.golden()),
        new Window(
            deviation(curves.lower(), curves.golden()), deviation(curves.upper(), curves.golden())),
        Rounded.of(curves.matchLimit()),
        curves.regions(),
        curves.smoothing(),
        Spreads.channel(units.leftLevel(), units.leftDeviation()),
        Spreads.channel(units.rightLevel(), units.rightDeviation()),
        Spreads.difference(units.difference()),
        notes(units),
        units.units().stream().map(BatchUnit::station).distinct().sorted().toList(),
        links);
  }

  /**
   * @param limit most units wanted; where there are more, an even choice over production order that
   *     holds the first and the last
   */
  static BatchJson.Curves curves(BatchCurves batch, int limit) {
    FirstPass units = FirstPass.of(batch);
    int of = units.drawn().size();
    int shown = Math.min(limit, of);
    List<UnitCurves> rows = new ArrayList<>();
    for (int i = 0; i < shown; i++) {
      int row = shown == 1 ? 0 : (int) ((long) i * (of - 1) / (shown - 1));
      rows.add(unit(units, row));
    }
    return new BatchJson.Curves(Grid.frequencies(), rows, shown, of);
  }

  private static UnitCurves unit(FirstPass units, int row) {
    BatchUnit unit = units.drawn().get(row);
    return new UnitCurves(
        unit.inspection(),
        unit.serial(),
        unit.verdict(),
        Rounded.row(units.leftDeviation(), row, Grid.POINTS),
        Rounded.row(units.rightDeviation(), row, Grid.POINTS),
        Rounded.row(units.difference(), row, Grid.POINTS));
  }

  private Yield shared(Proportion passed, String method) {
    Double share = passed.trials() == 0 ? null : (Double) passed.share();
    return new Yield(
        passed.hits(),
        passed.trials(),
        share,
        CONFIDENCE,
        ends(passed.wilson(CONFIDENCE)),
        ends(passed.clopperPearson(CONFIDENCE)),
        texts.render(locale, method, Map.of()));
  }

  private static double[] ends(Interval interval) {
    return new double[] {interval.lower(), interval.upper()};
  }

  private static double[] deviation(double[] limit, double[] golden) {
    double[] deviation = new double[limit.length];
    for (int i = 0; i < limit.length; i++) {
      deviation[i] = limit[i] - golden[i];
    }
    return Rounded.of(deviation);
  }

  private List<String> notes(FirstPass units) {
    List<String> notes = new ArrayList<>();
    int have = units.drawn().size();
    if (have < units.units().size()) {
      notes.add(note("no-curves", Map.of("count", units.units().size() - have)));
    }
    if (have < 2) {
      notes.add(note("no-spread", Map.of("have", have)));
    }
    for (int i = Spreads.PERCENTS.length / 2 - 1; i >= 0; i--) {
      int need = Spreads.unitsNeeded(Spreads.PERCENTS[i]);
      if (have < need) {
        String high = Spreads.key(Spreads.PERCENTS[Spreads.PERCENTS.length - 1 - i]);
        notes.add(
            note(
                "percentiles",
                Map.of(
                    "low",
                    Spreads.key(Spreads.PERCENTS[i]),
                    "high",
                    high,
                    "need",
                    need,
                    "have",
                    have)));
      }
    }
    if (units.further() > 0) {
      notes.add(note("further", Map.of("count", units.further())));
    }
    return notes;
  }

  private String note(String key, Map<String, ?> values) {
    return texts.render(locale, "batch.note." + key, values);
  }
}
