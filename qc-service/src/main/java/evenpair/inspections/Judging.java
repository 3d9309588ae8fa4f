package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.MeasuredPair;
import evenpair.tolerance.Reason;
import evenpair.tolerance.TuningGuess;
import evenpair.tolerance.Verdict;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The one way from stored floats to a judgement: ingest, look-up and judging again all come through
 * here.
 *
 * @param limits the set that judges
 * @param uncertainty what the measurement is worth; needed by a guarded set only
 * @param others the product's other tunings, whose golden responses a wrong one is told by
 */
record Judging(
    StoredLimitSet limits, Optional<UsedUncertainty> uncertainty, List<StoredLimitSet> others) {
  Judging {
    others = List.copyOf(others);
  }

  LimitSet set() {
    return limits.set();
  }

  /**
   * @param seatings one at least, in the order of their attempts
   */
  Judgement judge(List<StoredPair> seatings) {
    MeasuredPair mean = Combination.of(seatings);
    Judgement judgement =
        limits.judge().judge(mean, uncertainty.map(UsedUncertainty::toUncertainty));
    boolean judged = judgement.verdict() == Verdict.PASS || judgement.verdict() == Verdict.FAIL;
    return judged
        ? otherTuning(mean).map(reason -> failed(judgement, reason)).orElse(judgement)
        : judgement;
  }

  private Optional<Reason> otherTuning(MeasuredPair mean) {
    if (others.isEmpty()) {
      return Optional.empty();
    }
    Map<String, GoldenResponse> goldens = new LinkedHashMap<>();
    goldens.put(set().tuning(), limits.golden());
    others.forEach(other -> goldens.put(other.set().tuning(), other.golden()));
    return TuningGuess.otherThan(set().tuning(), mean, goldens, set().level().band());
  }

  /**
   * A pair that plays another tuning fails whatever else it does, and that is what is said first.
   */
  private static Judgement failed(Judgement judgement, Reason otherTuning) {
    List<Reason> reasons = new ArrayList<>();
    reasons.add(otherTuning);
    reasons.addAll(judgement.reasons());
    return new Judgement(
        Verdict.FAIL,
        reasons,
        judgement.results(),
        judgement.leftLevelDb(),
        judgement.rightLevelDb(),
        false);
  }
}
