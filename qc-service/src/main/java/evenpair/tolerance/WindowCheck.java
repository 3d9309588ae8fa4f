package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.tolerance.Findings.Rank;
import java.util.List;
import java.util.Optional;

/** lower(f) ≤ d_c(f) ≤ upper(f) at every grid point of each region, for each channel by itself. */
final class WindowCheck implements Check {
  private final Band alignmentBand;
  private final List<RegionLimits> regions;

  WindowCheck(Band alignmentBand, List<RegionLimits> regions) {
    this.alignmentBand = alignmentBand;
    this.regions = regions;
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    for (RegionLimits limits : regions) {
      for (Channel channel : Channel.values()) {
        Optional<Curve> deviation = pair.deviation(channel).filter(d -> judged(limits, d, pair));
        if (deviation.isPresent()) {
          look(limits, channel, deviation.get(), pair.guard(), findings);
        } else {
          findings.result(RegionResult.notJudged(ReasonKind.WINDOW, limits.name(), channel));
        }
      }
    }
  }

  private static boolean judged(RegionLimits limits, Curve deviation, JudgedPair pair) {
    return limits.firstGap(deviation).isEmpty() && limits.firstUnguarded(pair.guard()).isEmpty();
  }

  private void look(
      RegionLimits limits, Channel channel, Curve deviation, Guard guard, Findings findings) {
    Worst worst = limits.window(deviation, guard);
    findings.result(worst.result(ReasonKind.WINDOW, limits.name(), channel));
    if (guard.rejects(worst.state())) {
      Reason reason = worst.deciding().reason(ReasonKind.WINDOW, limits.name(), channel);
      boolean tilts = limits.leavesWindowInside(alignmentBand, deviation, guard);
      Rank rank = tilts ? Rank.ALIGNMENT_BAND : Rank.REST;
      findings.failure(reason, rank, worst.deciding().severity());
    }
  }
}
