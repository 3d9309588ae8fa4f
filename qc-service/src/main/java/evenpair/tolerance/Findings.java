package evenpair.tolerance;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/** What the checks of one judgement found; ranks it at the end. */
final class Findings {
  private final List<RegionResult> results = new ArrayList<>();
  private final List<Failure> failures = new ArrayList<>();
  private final Set<Reason> blocking = new LinkedHashSet<>();
  private final Set<Reason> undecided = new LinkedHashSet<>();

  /** Which failures come first, whatever their size. */
  enum Rank {
    POLARITY,
    LEVEL,
    BALANCE,
    /**
     * A window failing inside the alignment band tilts everything else, so that it comes before the
     * rest.
     */
    ALIGNMENT_BAND,
    REST
  }

  /**
   * @param severity excess ÷ half-width, compared inside one rank
   */
  private record Failure(Reason reason, Rank rank, double severity) {}

  void result(RegionResult result) {
    results.add(result);
  }

  void failure(Reason reason, Rank rank, double severity) {
    failures.add(new Failure(reason, rank, severity));
  }

  /** Notes that the pair cannot be judged, whatever else fails. */
  void blocked(Reason reason) {
    blocking.add(reason);
  }

  /**
   * Notes a check that came to no result: the pair cannot pass, but another failure still fails it.
   */
  void undecided(Reason reason) {
    undecided.add(reason);
  }

  Judgement judgement(JudgedPair pair) {
    if (!blocking.isEmpty()) {
      return judgement(Verdict.INVALID, List.copyOf(blocking), results, pair);
    }
    if (!failures.isEmpty()) {
      return judgement(Verdict.FAIL, ranked(), results, pair);
    }
    return undecided.isEmpty()
        ? judgement(Verdict.PASS, List.of(), results, pair)
        : judgement(Verdict.INVALID, List.copyOf(undecided), results, pair);
  }

  /**
   * @return INVALID, no row being judged: a guarded set without guard bands must not show what
   *     simple acceptance would say
   */
  Judgement undecidable(JudgedPair pair) {
    List<RegionResult> rows =
        results.stream()
            .map(row -> RegionResult.notJudged(row.check(), row.region(), row.channel()))
            .toList();
    return judgement(Verdict.INVALID, List.copyOf(blocking), rows, pair);
  }

  private Judgement judgement(
      Verdict verdict, List<Reason> reasons, List<RegionResult> rows, JudgedPair pair) {
    Double left = pair.alignment(Channel.LEFT).orElse(null);
    Double right = pair.alignment(Channel.RIGHT).orElse(null);
    return new Judgement(verdict, reasons, rows, left, right, conditional(verdict));
  }

  /**
   * The gravest state of any row tells: a pass with a conditional row, a fail without a full one.
   */
  private boolean conditional(Verdict verdict) {
    CheckState gravest =
        results.stream()
            .map(RegionResult::state)
            .max(Comparator.naturalOrder())
            .orElse(CheckState.PASS);
    return switch (gravest) {
      case CONDITIONAL_PASS -> verdict == Verdict.PASS || verdict == Verdict.FAIL;
      case CONDITIONAL_FAIL -> verdict == Verdict.FAIL;
      default -> false;
    };
  }

  /** The sort is stable: equal failures stay in the order of regions, left before right. */
  private List<Reason> ranked() {
    return failures.stream()
        .sorted(
            Comparator.comparing(Failure::rank)
                .thenComparing(Failure::severity, Comparator.reverseOrder()))
        .map(Failure::reason)
        .toList();
  }
}
