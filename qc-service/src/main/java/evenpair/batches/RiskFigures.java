package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.BatchMeasurement.Pooled;
import evenpair.batches.BatchMeasurement.StationShare;
import evenpair.batches.BatchRisks.CheckRisk;
import evenpair.batches.BatchRisks.PointRisk;
import evenpair.batches.RiskJson.Check;
import evenpair.batches.RiskJson.Decision;
import evenpair.batches.RiskJson.Largest;
import evenpair.batches.RiskJson.Point;
import evenpair.batches.RiskJson.Risks;
import evenpair.batches.RiskJson.StationBudget;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.tolerance.LimitSet;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;

/** A batch's risks as JSON, with what cannot be said. */
final class RiskFigures {
  /** The standard deviation of 30 values is known to about 13 %. Common practice, no source. */
  private static final int ENOUGH_UNITS = 30;

  private final Texts texts;
  private final Locale locale;

  RiskFigures(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  /**
   * @param set the one that judged every unit of the batch
   */
  Risks risks(String batch, BatchCurves curves, LimitSet set, List<StationShare> shares) {
    FirstPass units = FirstPass.of(curves);
    Optional<Pooled> pooled = Pooled.of(shares);
    List<CheckRisk> found =
        pooled.map(u -> new BatchRisks(units, set, u).checks()).orElse(List.of());
    List<Check> checks = checks(found);
    return new Risks(
        batch,
        curves.product(),
        curves.tuning(),
        set.version(),
        units.drawn().size(),
        decision(set.decision()),
        shares.stream()
            .map(s -> new StationBudget(s.station(), s.units(), s.uncertainty().isPresent()))
            .toList(),
        largest(checks, true),
        largest(checks, false),
        checks,
        text("method", Map.of()),
        notes(units.drawn().size(), shares, found));
  }

  List<Check> checks(List<CheckRisk> found) {
    return found.stream().map(this::check).toList();
  }

  private static Decision decision(LimitSet.DecisionRule rule) {
    return rule.guarded()
        ? new Decision("guarded", rule.guard(), rule.acceptConditionalPass())
        : new Decision("simple", 0, null);
  }

  private Check check(CheckRisk risk) {
    return new Check(
        risk.check(),
        risk.region(),
        risk.channel(),
        risk.consumersWorst().map(point -> point(point, point.consumer())).orElse(null),
        risk.producersWorst().map(point -> point(point, point.producer())).orElse(null));
  }

  private static Point point(PointRisk point, double risk) {
    return new Point(
        risk,
        point.at() < 0 ? null : (Double) Grid.label(point.at()),
        Rounded.of(point.spread().mean()),
        Rounded.of(point.spread().sd()),
        Rounded.of(point.spread().um()),
        Rounded.of(point.lower()),
        Rounded.of(point.upper()),
        Rounded.of(point.guardDb()));
  }

  static Largest largest(List<Check> checks, boolean consumers) {
    Largest largest = null;
    for (Check check : checks) {
      Point point = consumers ? check.consumers() : check.producers();
      if (point != null && (largest == null || point.risk() > largest.risk())) {
        largest = new Largest(point.risk(), check.check(), check.region(), check.channel());
      }
    }
    return largest;
  }

  List<String> notes(int units, List<StationShare> shares, List<CheckRisk> checks) {
    List<String> notes = new ArrayList<>();
    List<String> without =
        shares.stream().filter(s -> s.uncertainty().isEmpty()).map(StationShare::station).toList();
    if (!without.isEmpty()) {
      notes.add(text("note.no-budget", Map.of("stations", String.join(", ", without))));
    }
    if (checks.isEmpty()) {
      notes.add(text("note.nothing", Map.of()));
      return notes;
    }
    if (units < 2) {
      notes.add(text("note.no-spread", Map.of("have", units)));
    } else if (units < ENOUGH_UNITS) {
      notes.add(text("note.few-units", Map.of("have", units, "need", ENOUGH_UNITS)));
    }
    note(notes, "note.unknown", checks, check -> check.unknownPoints() > 0);
    note(notes, "note.no-spread-left", checks, check -> check.alikePoints() > 0);
    notes.add(text("note.one-point", Map.of()));
    return notes;
  }

  private void note(
      List<String> notes, String key, List<CheckRisk> checks, Predicate<CheckRisk> which) {
    List<String> names = checks.stream().filter(which).map(this::name).toList();
    if (!names.isEmpty()) {
      notes.add(text(key, Map.of("checks", String.join(", ", names))));
    }
  }

  private String name(CheckRisk check) {
    Map<String, String> values = new HashMap<>();
    values.put("region", check.region());
    values.put("channel", check.channel());
    return text("check." + check.check(), values);
  }

  private String text(String key, Map<String, ?> values) {
    return texts.render(locale, "risk." + key, values);
  }
}
