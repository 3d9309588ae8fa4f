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
        look(limits, channel, pair.deviation(channel), findings);
      }
    }
  }

  private void look(
      RegionLimits limits, Channel channel, Optional<Curve> deviation, Findings findings) {
    if (deviation.isEmpty() || limits.firstGap(deviation.get()).isPresent()) {
      findings.result(RegionResult.notJudged(ReasonKind.WINDOW, limits.name(), channel));
      return;
    }
    Margin margin = limits.window(deviation.get());
    findings.result(margin.result(ReasonKind.WINDOW, limits.name(), channel));
    if (margin.fails()) {
      Reason reason = margin.reason(ReasonKind.WINDOW, limits.name(), channel);
      findings.failure(reason, rank(limits, deviation.get()), margin.severity());
    }
  }

  private Rank rank(RegionLimits limits, Curve deviation) {
    return limits.leavesWindowInside(alignmentBand, deviation) ? Rank.ALIGNMENT_BAND : Rank.REST;
  }
}
