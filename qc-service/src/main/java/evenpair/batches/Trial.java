package evenpair.batches;

import evenpair.inspections.RecordedUnits;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.FlatJudge;
import evenpair.tolerance.FlatJudge.Outcome;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.Verdict;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;

/**
 * One limit set over recorded units. Level, balance, windows and match of every unit are compared
 * on flat arrays; what other checks found stands in the record, as long as the set that recorded it
 * asks the same of them. Everything else goes through the judge itself: units too near to a limit
 * for 32 bits, and units whose other checks the trial's set changes.
 */
final class Trial {
  private final StoredLimitSet set;
  private final TrialUnits units;
  private final TrialWorth worth;
  private final RecordedUnits recorded;
  private final Function<UUID, StoredLimitSet> setOf;

  /**
   * @param setOf a stored set by its id
   */
  Trial(
      StoredLimitSet set,
      TrialUnits units,
      TrialWorth worth,
      RecordedUnits recorded,
      Function<UUID, StoredLimitSet> setOf) {
    this.set = set;
    this.units = units;
    this.worth = worth;
    this.recorded = recorded;
    this.setOf = setOf;
  }

  /**
   * What becomes of the units.
   *
   * @param verdicts by unit; INVALID: cannot be judged by this set
   * @param conditional how many passes have a check inside the guard band
   * @param checks how many fail each check, in the order of the set, then the other checks
   * @param exact units that the judge itself looked at
   * @param scale by unit the scale of windows and match limits at which it begins to fail them; NaN
   *     where that cannot be told
   * @param otherwise by unit true if a check beside level, balance, windows and match keeps it from
   *     passing
   */
  record Result(
      Verdict[] verdicts,
      int conditional,
      List<CheckCount> checks,
      int exact,
      float[] scale,
      boolean[] otherwise) {
    int count(Verdict verdict) {
      return (int) Arrays.stream(verdicts).filter(v -> v == verdict).count();
    }
  }

  /**
   * @param units that fail it, whatever else they fail
   * @param sole of them, those that fail nothing else
   * @param worst the unit with the smallest margin; null where there is no margin
   */
  record CheckCount(
      ReasonKind kind,
      String region,
      Channel channel,
      int units,
      int sole,
      RecordedUnit worst,
      Double worstMarginDb) {}

  Result run() {
    FlatJudge judge = flat();
    Outcome flat = judge.judge(units.table(), unlike());
    Map<UUID, Judgement> exact = recorded.by(set, exactly(flat), worth::of);
    TrialCounts counts = new TrialCounts(set.set(), judge.checks());
    counts.flat(judge.checks(), flat, units);
    Verdict[] verdicts = new Verdict[units.units().size()];
    boolean[] otherwise = new boolean[verdicts.length];
    int conditional = 0;
    for (int u = 0; u < verdicts.length; u++) {
      RecordedUnit unit = units.units().get(u);
      Judgement judgement = exact.get(unit.inspection());
      if (judgement != null) {
        verdicts[u] = judgement.verdict();
        counts.judged(judgement, unit);
        otherwise[u] = otherwise(judgement);
        conditional += judgement.verdict() == Verdict.PASS && judgement.conditional() ? 1 : 0;
      } else {
        verdicts[u] = fast(u, flat, counts);
        otherwise[u] =
            TrialUnits.failsOtherwise(unit)
                || TrialUnits.playsOtherTuning(unit)
                || unit.undecided();
        boolean near = units.row()[u] >= 0 && flat.conditional[units.row()[u]];
        conditional += verdicts[u] == Verdict.PASS && near ? 1 : 0;
      }
    }
    return new Result(verdicts, conditional, counts.all(), exact.size(), scales(judge), otherwise);
  }

  private static boolean otherwise(Judgement judgement) {
    return judgement.verdict() == Verdict.INVALID
        || judgement.reasons().stream().anyMatch(r -> !TrialCounts.ofTheLevels(r.kind()));
  }

  /**
   * @return judgements with every reason of some units, by the judge itself
   */
  Map<UUID, Judgement> explain(List<RecordedUnit> some) {
    return recorded.by(set, some, worth::of);
  }

  private FlatJudge flat() {
    return new FlatJudge(set.set(), set.golden(), units.groups().stream().map(worth::of).toList());
  }

  /**
   * @return by row: true for a unit recorded by a set whose other checks are not the trial's
   */
  private boolean[] unlike() {
    Map<UUID, Boolean> alike = new HashMap<>();
    boolean[] unlike = new boolean[units.table().rows()];
    for (int u = 0; u < units.row().length; u++) {
      if (units.row()[u] >= 0) {
        UUID then = units.units().get(u).limitSetId();
        unlike[units.row()[u]] = !alike.computeIfAbsent(then, id -> alike(setOf.apply(id), set));
      }
    }
    return unlike;
  }

  /**
   * @return true if both sets ask the same of every check beside level, balance, windows and match
   */
  static boolean alike(StoredLimitSet then, StoredLimitSet now) {
    LimitSet a = then.set();
    LimitSet b = now.set();
    return then.goldenId().equals(now.goldenId())
        && a.level().band().equals(b.level().band())
        && a.distortion().equals(b.distortion())
        && a.polarity().equals(b.polarity())
        && a.idleNoiseDba().equals(b.idleNoiseDba());
  }

  private List<RecordedUnit> exactly(Outcome flat) {
    List<RecordedUnit> exactly = new ArrayList<>();
    for (int u = 0; u < units.row().length; u++) {
      if (units.row()[u] >= 0 && flat.state[units.row()[u]] == Outcome.NEAR) {
        exactly.add(units.units().get(u));
      }
    }
    return exactly;
  }

  /**
   * In the judge's own order: what cannot be judged, what fails, what stayed open, other tuning.
   */
  private Verdict fast(int u, Outcome flat, TrialCounts counts) {
    RecordedUnit unit = units.units().get(u);
    int row = units.row()[u];
    if (row < 0) {
      counts.others(unit, 0);
      return Verdict.valueOf(unit.verdict());
    }
    if (flat.state[row] == Outcome.NO_DATA || flat.state[row] == Outcome.UNDECIDABLE) {
      return Verdict.INVALID;
    }
    boolean fails = flat.state[row] == Outcome.FAIL || TrialUnits.failsOtherwise(unit);
    if (!fails && unit.undecided()) {
      return Verdict.INVALID;
    }
    counts.others(unit, flat.failing[row]);
    return fails || TrialUnits.playsOtherTuning(unit) ? Verdict.FAIL : Verdict.PASS;
  }

  private float[] scales(FlatJudge judge) {
    float[] byRow = judge.criticalScale(units.table());
    float[] scales = new float[units.row().length];
    for (int u = 0; u < scales.length; u++) {
      scales[u] = units.row()[u] < 0 ? Float.NaN : byRow[units.row()[u]];
    }
    return scales;
  }
}
