package evenpair.batches;

import evenpair.batches.TrialJson.TrialView;
import evenpair.batches.TrialJson.TriedSet;
import evenpair.batches.TrialJson.Units;
import evenpair.inspections.RecordedUnits;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.inspections.RecordedUnits.Which;
import evenpair.products.LimitTexts;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Verdict;
import evenpair.web.Refusal;
import evenpair.web.Texts;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import org.springframework.stereotype.Component;

/** Runs trials: any limit set on any recorded units; nothing is stored. */
@Component
class Trials {
  private final RecordedUnits recorded;
  private final Products products;
  private final LimitTexts limitTexts;
  private final TrialPools pools;
  private final TrialSelection selection;
  private final BatchMeasurement measurement;
  private final Texts texts;
  private final Clock clock;

  Trials(
      RecordedUnits recorded,
      Products products,
      LimitTexts limitTexts,
      TrialPools pools,
      TrialSelection selection,
      BatchMeasurement measurement,
      Texts texts,
      Clock clock) {
    this.recorded = recorded;
    this.products = products;
    this.limitTexts = limitTexts;
    this.pools = pools;
    this.selection = selection;
    this.measurement = measurement;
    this.texts = texts;
    this.clock = clock;
  }

  /** Units and the set that is tried on them. */
  record Prepared(Which which, StoredLimitSet set, TrialUnits units, TrialWorth worth) {}

  /**
   * @param text the set in YAML; empty for a stored version
   * @param version that version; null for the active one
   */
  Prepared prepare(String batch, TrialRequest request, byte[] text, Integer version) {
    TrialSelection.Part part =
        selection.of(request.batches(batch), request.product(), request.tuning());
    StoredLimitSet set =
        hasSet(text) ? limitTexts.read(part.product(), part.tuning(), text) : stored(part, version);
    Which which = request.which(batch, part.product(), part.tuning());
    TrialUnits units = pools.of(which, set);
    requireUnits(units, batch);
    units.units().stream()
        .map(RecordedUnit::limitSetId)
        .distinct()
        .map(products::limitSet)
        .forEach(then -> requireComparable(then.set(), set.set()));
    return new Prepared(
        which,
        set,
        units,
        TrialWorth.of(request.statedUncertainty(), units, set.set(), measurement));
  }

  /** A client that must send JSON sends an empty object for nothing. */
  private static boolean hasSet(byte[] text) {
    String written = new String(text, StandardCharsets.UTF_8).strip();
    return !written.isEmpty() && !written.equals("{}");
  }

  private StoredLimitSet stored(TrialSelection.Part part, Integer version) {
    return (version == null
            ? products.activeAt(part.product(), part.tuning(), clock.instant())
            : products.limitSet(part.product(), part.tuning(), version))
        .orElseThrow(
            () ->
                new Refusal(
                        404,
                        "unknown-version",
                        "%s %s has no %s."
                            .formatted(
                                part.product(),
                                part.tuning(),
                                version == null
                                    ? "active limit set"
                                    : "limit set of version " + version))
                    .with("field", "version"));
  }

  private static void requireUnits(TrialUnits units, String batch) {
    if (units.units().isEmpty()) {
      throw new Refusal(
          422, "no-units", "No closed inspection of batch " + batch + " answers to the question.");
    }
  }

  /** Levels hold at the drive and on the ear simulator that they were measured with. */
  private static void requireComparable(LimitSet then, LimitSet tried) {
    if (then.earSimulator() != tried.earSimulator()) {
      throw new Refusal(
              422,
              "other-ear-simulator",
              "The units were measured on %s, the set is for %s: they never meet."
                  .formatted(then.earSimulator().label(), tried.earSimulator().label()))
          .with("field", "ear-simulator");
    }
    if (!then.drive().equals(tried.drive())) {
      throw new Refusal(
              422,
              "other-drive",
              "The units were measured at %s, the set is for %s: what they would have given is not known."
                  .formatted(words(then.drive()), words(tried.drive())))
          .with("field", "drive");
    }
  }

  private static String words(Drive drive) {
    return drive instanceof Drive.Voltage voltage
        ? voltage.millivoltsRms() + " mV r.m.s."
        : ((Drive.Digital) drive).dbfs() + " dBFS";
  }

  Trial trial(Prepared prepared) {
    return new Trial(
        prepared.set(), prepared.units(), prepared.worth(), recorded, products::limitSet);
  }

  TrialView view(Prepared prepared, Optional<Prices> prices, Locale locale) {
    LimitSet set = prepared.set().set();
    TrialUnits units = prepared.units();
    Trial trial = trial(prepared);
    Trial.Result result = trial.run();
    TrialRisks risks = TrialRisks.of(units, set, prepared.worth().shares());
    TrialFigures figures = new TrialFigures(texts, locale);
    return new TrialView(
        set.product(),
        set.tuning(),
        units.units().stream().map(RecordedUnit::batch).distinct().sorted().toList(),
        tried(prepared.set()),
        counts(units, result),
        TrialFigures.share(result.count(Verdict.PASS), result.count(Verdict.FAIL)),
        recorded(units.units()),
        figures.flips(units.units(), result, trial),
        figures.checks(result),
        figures.risks(risks, prepared.worth()),
        prices
            .map(p -> TrialFigures.costs(p, result, units.units(), risks.escapes(1)))
            .orElse(null),
        TrialFigures.tightness(Tightness.of(units, set, prepared.worth(), result), prices, risks),
        figures.notes(units, result, set, prices));
  }

  TriedSet tried(StoredLimitSet set) {
    return new TriedSet(
        set.set().version(), set.digest(), limitTexts.write(set.set()), limitTexts.tree(set.set()));
  }

  private static Units counts(TrialUnits units, Trial.Result result) {
    return new Units(
        units.units().size(),
        units.table().rows(),
        result.count(Verdict.PASS),
        result.count(Verdict.FAIL),
        result.count(Verdict.INVALID),
        result.conditional(),
        result.exact(),
        units.further());
  }

  private static TrialJson.Share recorded(List<RecordedUnit> units) {
    int passed = (int) units.stream().filter(unit -> "PASS".equals(unit.verdict())).count();
    return TrialFigures.share(passed, units.size() - passed);
  }
}
