package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.tolerance.Findings.Rank;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** |L_L(f) − L_R(f)| ≤ match(f) at every grid point of each region that has a match limit. */
final class MatchCheck {
  private final List<RegionLimits> regions;

  MatchCheck(List<RegionLimits> regions) {
    this.regions = regions.stream().filter(RegionLimits::hasMatch).toList();
  }

  /**
   * @param failingImbalance a_L − a_R in dB if the balance check failed
   * @return the failing regions that would pass with the imbalance taken out: these fold into
   *     another reason
   */
  List<String> look(JudgedPair pair, Findings findings, Optional<Double> failingImbalance) {
    List<String> folded = new ArrayList<>();
    for (RegionLimits limits : regions) {
      if (!judged(limits, pair)) {
        findings.result(RegionResult.notJudged(ReasonKind.MATCH, limits.name(), null));
        continue;
      }
      Worst worst = limits.match(pair.difference(), pair.guard());
      findings.result(worst.amount(ReasonKind.MATCH, limits.name()));
      if (!pair.guard().rejects(worst.state())) {
        continue;
      }
      if (failingImbalance.isPresent() && explains(failingImbalance.get(), limits, pair)) {
        folded.add(limits.name());
      } else {
        Reason reason = worst.deciding().reason(ReasonKind.MATCH, limits.name(), null);
        findings.failure(reason, Rank.REST, worst.deciding().severity());
      }
    }
    return folded;
  }

  private static boolean judged(RegionLimits limits, JudgedPair pair) {
    return limits.firstGap(pair.difference()).isEmpty()
        && limits.firstUnguarded(pair.guard()).isEmpty();
  }

  private static boolean explains(double imbalance, RegionLimits limits, JudgedPair pair) {
    Curve rest = pair.difference().plus(-imbalance);
    return !pair.guard().rejects(limits.match(rest, pair.guard()).state());
  }
}
