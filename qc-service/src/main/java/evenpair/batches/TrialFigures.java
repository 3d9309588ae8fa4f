package evenpair.batches;

import evenpair.batches.RiskJson.Check;
import evenpair.batches.RiskJson.StationBudget;
import evenpair.batches.Tightness.Point;
import evenpair.batches.Trial.CheckCount;
import evenpair.batches.TrialJson.CheckShare;
import evenpair.batches.TrialJson.CostShares;
import evenpair.batches.TrialJson.Costs;
import evenpair.batches.TrialJson.Flip;
import evenpair.batches.TrialJson.Flips;
import evenpair.batches.TrialJson.RiskShares;
import evenpair.batches.TrialJson.Share;
import evenpair.batches.TrialJson.TightnessPoint;
import evenpair.batches.TrialRisks.Escapes;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.statistics.Proportion;
import evenpair.statistics.Proportion.Interval;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonText;
import evenpair.tolerance.Verdict;
import evenpair.web.Texts;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** Parts of a trial's answer, in the reader's language. */
final class TrialFigures {
  static final int MOST_FLIPS = 200;
  private static final double CONFIDENCE = 0.95;

  private final Texts texts;
  private final Locale locale;

  TrialFigures(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  /**
   * @param trial asked for the reasons of those shown
   */
  Flips flips(List<RecordedUnit> units, Trial.Result result, Trial trial) {
    int[] to = new int[Verdict.values().length];
    List<Integer> shown = new ArrayList<>();
    for (int u = 0; u < units.size(); u++) {
      if (!result.verdicts()[u].name().equals(units.get(u).verdict())) {
        to[result.verdicts()[u].ordinal()]++;
        if (shown.size() < MOST_FLIPS) {
          shown.add(u);
        }
      }
    }
    Map<UUID, Judgement> why = trial.explain(shown.stream().map(units::get).toList());
    return new Flips(
        to[Verdict.PASS.ordinal()],
        to[Verdict.FAIL.ordinal()],
        to[Verdict.INVALID.ordinal()],
        shown.stream().map(u -> flip(units.get(u), why.get(units.get(u).inspection()))).toList());
  }

  private Flip flip(RecordedUnit unit, Judgement judgement) {
    return new Flip(
        unit.inspection(),
        unit.serial(),
        unit.batch(),
        unit.station(),
        unit.at(),
        unit.verdict(),
        judgement.verdict().name(),
        sentences(unit.reasons()),
        sentences(judgement.reasons()));
  }

  private List<String> sentences(List<Reason> reasons) {
    return reasons.stream()
        .map(ReasonText::of)
        .map(text -> texts.render(locale, text.key(), text.values()))
        .toList();
  }

  List<CheckShare> checks(Trial.Result result) {
    int judged = result.verdicts().length - result.count(Verdict.INVALID);
    ReasonRanking words = new ReasonRanking(texts, locale);
    return result.checks().stream().map(check -> share(check, judged, words)).toList();
  }

  private static CheckShare share(CheckCount check, int judged, ReasonRanking words) {
    String kind = check.kind().word();
    String channel = check.channel() == null ? null : check.channel().word();
    RecordedUnit worst = check.worst();
    return new CheckShare(
        kind,
        check.region(),
        channel,
        check.units(),
        judged == 0 ? 0 : (double) check.units() / judged,
        check.sole(),
        check.worstMarginDb() == null ? null : (Double) Rounded.of(check.worstMarginDb()),
        worst == null ? null : worst.serial(),
        worst == null ? null : worst.inspection(),
        words.text(kind, channel, check.region()));
  }

  RiskShares risks(TrialRisks risks, TrialWorth worth) {
    RiskFigures figures = new RiskFigures(texts, locale);
    List<Check> checks = figures.checks(risks.checks());
    Escapes escapes = risks.escapes(1);
    return new RiskShares(
        RiskFigures.largest(checks, true),
        RiskFigures.largest(checks, false),
        orNull(escapes.atLeast()),
        orNull(escapes.atMost()),
        worth.stated(),
        worth.shares().stream()
            .map(s -> new StationBudget(s.station(), s.units(), s.uncertainty().isPresent()))
            .toList(),
        checks,
        text("risk.method", Map.of()),
        figures.notes(risks.units(), worth.shares(), risks.checks()));
  }

  static Costs costs(
      Prices prices, Trial.Result result, List<RecordedUnit> units, Escapes escapes) {
    int judged = result.verdicts().length - result.count(Verdict.INVALID);
    long failed = units.stream().filter(unit -> "FAIL".equals(unit.verdict())).count();
    Escapes unknown = new Escapes(Double.NaN, Double.NaN);
    return new Costs(
        shares(prices.of(ratio(result.count(Verdict.FAIL), judged), escapes)),
        shares(prices.of(ratio(failed, units.size()), unknown)));
  }

  private static double ratio(long some, long all) {
    return all == 0 ? 0 : (double) some / all;
  }

  static Share share(int passed, int failed) {
    Proportion counted = new Proportion(passed, passed + failed);
    return new Share(
        passed,
        passed + failed,
        orNull(counted.share()),
        CONFIDENCE,
        ends(counted.wilson(CONFIDENCE)),
        ends(counted.clopperPearson(CONFIDENCE)));
  }

  private static double[] ends(Interval interval) {
    return new double[] {interval.lower(), interval.upper()};
  }

  private static CostShares shares(Prices.Cost cost) {
    return new CostShares(
        cost.scrapped(),
        cost.reworked(),
        orNull(cost.escapedAtLeast()),
        orNull(cost.escapedAtMost()),
        orNull(cost.totalAtLeast()),
        orNull(cost.totalAtMost()));
  }

  static List<TightnessPoint> tightness(
      List<Point> points, Optional<Prices> prices, TrialRisks risks) {
    return points.stream().map(point -> tightness(point, prices, risks)).toList();
  }

  private static TightnessPoint tightness(Point point, Optional<Prices> prices, TrialRisks risks) {
    double rejected = point.of() == 0 ? 0 : 1 - (double) point.passed() / point.of();
    Optional<Prices.Cost> cost = prices.map(p -> p.of(rejected, risks.escapes(point.scale())));
    return new TightnessPoint(
        point.scale(),
        point.passed(),
        point.of(),
        point.of() == 0 ? null : (Double) (1 - rejected),
        cost.map(c -> orNull(c.totalAtLeast())).orElse(null),
        cost.map(c -> orNull(c.totalAtMost())).orElse(null));
  }

  /** What the figures do not cover. */
  List<String> notes(TrialUnits units, Trial.Result result, LimitSet set, Optional<Prices> prices) {
    List<String> notes = new ArrayList<>();
    long never = units.units().size() - units.table().rows();
    if (never > 0) {
      notes.add(text("trial.note.never-sealed", Map.of("units", never)));
    }
    int undecided = result.count(Verdict.INVALID);
    if (undecided > 0) {
      notes.add(text("trial.note.undecided", Map.of("units", undecided)));
    }
    if (units.further() > 0) {
      notes.add(text("trial.note.further", Map.of("inspections", units.further())));
    }
    notes.add(text("trial.note.seating", Map.of()));
    if (set.decision().guarded()) {
      notes.add(text("trial.note.guarded", Map.of()));
    }
    if (prices.isPresent()) {
      notes.add(text("trial.note.cost", Map.of()));
    }
    return notes;
  }

  private String text(String key, Map<String, ?> values) {
    return texts.render(locale, key, values);
  }

  private static Double orNull(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
