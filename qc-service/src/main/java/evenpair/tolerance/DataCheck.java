package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.List;
import java.util.stream.IntStream;

/**
 * A required region, or the alignment band, that misses a single point cannot be judged: INVALID,
 * never a pass.
 */
final class DataCheck implements Check {
  private final Band alignmentBand;
  private final List<RegionLimits> regions;

  DataCheck(Band alignmentBand, List<RegionLimits> regions) {
    this.alignmentBand = alignmentBand;
    this.regions = regions;
  }

  @Override
  public void look(JudgedPair pair, Findings findings) {
    for (Channel channel : Channel.values()) {
      if (pair.alignment(channel).isEmpty()) {
        findings.blocked(noData(channel, null, firstGap(pair.offset(channel))));
      }
    }
    for (RegionLimits limits : regions) {
      if (limits.region().required()) {
        lookAt(limits, pair, findings);
      }
    }
  }

  private static void lookAt(RegionLimits limits, JudgedPair pair, Findings findings) {
    for (Channel channel : Channel.values()) {
      limits
          .firstGap(pair.offset(channel))
          .ifPresent(index -> findings.blocked(noData(channel, limits.name(), index)));
    }
  }

  private int firstGap(Curve curve) {
    return IntStream.rangeClosed(alignmentBand.firstIndex(), alignmentBand.lastIndex())
        .filter(i -> !curve.has(i))
        .findFirst()
        .orElseThrow();
  }

  private static Reason noData(Channel channel, String region, int index) {
    return new Reason(ReasonKind.NO_DATA, channel, region, Grid.hz(index), null, null, List.of());
  }
}
