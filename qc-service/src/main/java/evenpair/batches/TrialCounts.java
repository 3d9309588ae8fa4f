package evenpair.batches;

import evenpair.batches.Trial.CheckCount;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.tolerance.Channel;
import evenpair.tolerance.FlatCheck;
import evenpair.tolerance.FlatJudge.Outcome;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.RegionResult;
import evenpair.tolerance.Verdict;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How many units fail each check of a trial, and which comes nearest to (or farthest beyond) it.
 */
final class TrialCounts {
  private static final Set<ReasonKind> OF_THE_LEVELS =
      Set.of(ReasonKind.LEVEL, ReasonKind.BALANCE, ReasonKind.WINDOW, ReasonKind.MATCH);

  private final LimitSet set;
  private final Map<Key, Count> counts = new LinkedHashMap<>();

  private record Key(ReasonKind kind, String region, Channel channel) {
    Key(FlatCheck check) {
      this(check.kind(), check.region(), check.channel());
    }

    Key(Reason reason) {
      this(reason.kind(), reason.region(), reason.channel());
    }

    Key(RegionResult result) {
      this(result.check(), result.region(), result.channel());
    }
  }

  private static final class Count {
    private int units;
    private int sole;
    private RecordedUnit worst;
    private double worstMargin = Double.POSITIVE_INFINITY;

    void add(int more, int ofThemSole) {
      units += more;
      sole += ofThemSole;
    }

    void worst(double margin, RecordedUnit unit) {
      if (margin < worstMargin) {
        worstMargin = margin;
        worst = unit;
      }
    }

    CheckCount of(Key key) {
      Double margin = worst == null ? null : (Double) worstMargin;
      return new CheckCount(key.kind, key.region, key.channel, units, sole, worst, margin);
    }
  }

  TrialCounts(LimitSet set, List<FlatCheck> checks) {
    this.set = set;
    checks.forEach(check -> counts.put(new Key(check), new Count()));
  }

  static boolean ofTheLevels(ReasonKind kind) {
    return OF_THE_LEVELS.contains(kind);
  }

  /**
   * @return the set's checks in its order, then the others as they came
   */
  List<CheckCount> all() {
    return counts.entrySet().stream().map(entry -> entry.getValue().of(entry.getKey())).toList();
  }

  /** Checks beside the levels', as recorded. */
  void others(RecordedUnit unit, int failingLevels) {
    List<Key> others =
        unit.reasons().stream()
            .filter(reason -> !OF_THE_LEVELS.contains(reason.kind()))
            .map(Key::new)
            .distinct()
            .toList();
    int sole = failingLevels == 0 && others.size() == 1 ? 1 : 0;
    others.forEach(key -> count(key).add(1, sole));
  }

  /** A unit that the judge looked at. */
  void judged(Judgement judgement, RecordedUnit unit) {
    if (judgement.verdict() == Verdict.INVALID) {
      return;
    }
    Set<Key> failing = failing(judgement);
    int sole = failing.size() == 1 ? 1 : 0;
    failing.forEach(key -> count(key).add(1, sole));
    judgement.results().stream()
        .filter(result -> OF_THE_LEVELS.contains(result.check()) && result.marginDb() != null)
        .forEach(result -> count(new Key(result)).worst(result.marginDb(), unit));
  }

  /** The rows of the levels' checks, which no reason absorbs, and the reasons of the others. */
  private Set<Key> failing(Judgement judgement) {
    Set<Key> failing = new LinkedHashSet<>();
    judgement.results().stream()
        .filter(result -> OF_THE_LEVELS.contains(result.check()))
        .filter(result -> set.decision().rejects(result.state()))
        .forEach(result -> failing.add(new Key(result)));
    judgement.reasons().stream()
        .filter(reason -> !OF_THE_LEVELS.contains(reason.kind()))
        .forEach(reason -> failing.add(new Key(reason)));
    return failing;
  }

  /** Everything that the flat arrays told. */
  void flat(List<FlatCheck> checks, Outcome flat, TrialUnits units) {
    int[] unitOfRow = units.unitOfRow();
    int[] soles = new int[checks.size()];
    for (int row = 0; row < unitOfRow.length; row++) {
      RecordedUnit unit = units.units().get(unitOfRow[row]);
      if (flat.sole[row] != Outcome.NONE
          && !TrialUnits.failsOtherwise(unit)
          && !TrialUnits.playsOtherTuning(unit)) {
        soles[flat.sole[row]]++;
      }
    }
    for (int check = 0; check < soles.length; check++) {
      Count count = counts.get(new Key(checks.get(check)));
      count.add(flat.failures[check], soles[check]);
      if (flat.worstRow[check] >= 0) {
        count.worst(flat.worstMargin[check], units.units().get(unitOfRow[flat.worstRow[check]]));
      }
    }
  }

  private Count count(Key key) {
    return counts.computeIfAbsent(key, k -> new Count());
  }
}
