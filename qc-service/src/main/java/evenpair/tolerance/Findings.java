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
    Double left = pair.alignment(Channel.LEFT).orElse(null);
    Double right = pair.alignment(Channel.RIGHT).orElse(null);
    if (!blocking.isEmpty()) {
      return new Judgement(Verdict.INVALID, List.copyOf(blocking), results, left, right);
    }
    if (!failures.isEmpty()) {
      return new Judgement(Verdict.FAIL, ranked(), results, left, right);
    }
    return undecided.isEmpty()
        ? new Judgement(Verdict.PASS, List.of(), results, left, right)
        : new Judgement(Verdict.INVALID, List.copyOf(undecided), results, left, right);
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
