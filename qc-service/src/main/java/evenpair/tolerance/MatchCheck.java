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
      if (limits.firstGap(pair.difference()).isPresent()) {
        findings.result(RegionResult.notJudged(ReasonKind.MATCH, limits.name(), null));
        continue;
      }
      Margin margin = limits.match(pair.difference());
      findings.result(margin.amount(ReasonKind.MATCH, limits.name()));
      if (margin.fails() && explains(failingImbalance, limits, pair.difference())) {
        folded.add(limits.name());
      } else if (margin.fails()) {
        Reason reason = margin.reason(ReasonKind.MATCH, limits.name(), null);
        findings.failure(reason, Rank.REST, margin.severity());
      }
    }
    return folded;
  }

  private static boolean explains(
      Optional<Double> imbalance, RegionLimits limits, Curve difference) {
    return imbalance.isPresent() && !limits.match(difference.plus(-imbalance.get())).fails();
  }
}
