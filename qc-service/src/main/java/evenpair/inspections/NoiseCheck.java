package evenpair.inspections;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * The signal-to-noise ratio that the set asks for, point by point in each region. Where a response
 * lies below golden the ratio is credited with what it lacks: a dead driver is a FAIL of its
 * window, not a noisy room.
 */
final class NoiseCheck {
  private NoiseCheck() {}

  /**
   * @return one reason for each region and channel that is too noisy, at its worst point
   */
  static List<Reason> reasons(StoredPair pair, StoredLimitSet limits) {
    List<Reason> reasons = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      if (pair.of(channel).snrDb() == null) {
        continue;
      }
      Curve ratio = credited(pair.of(channel), limits.golden().level());
      for (Region region : limits.set().regions()) {
        worst(ratio, region.band())
            .filter(point -> ratio.at(point) < limits.set().signalToNoiseDb())
            .ifPresent(
                point ->
                    reasons.add(
                        noisy(channel, region, ratio, point, limits.set().signalToNoiseDb())));
      }
    }
    return reasons;
  }

  private static Curve credited(StoredChannel channel, Curve golden) {
    Curve ratio = Curve.ofFloats(channel.snrDb());
    Curve level = channel.level();
    double[] credited = ratio.toArray();
    for (int i = 0; i < Grid.POINTS; i++) {
      if (ratio.has(i) && level.has(i)) {
        credited[i] += Math.max(0, golden.at(i) - level.at(i));
      }
    }
    return Curve.of(credited);
  }

  private static Optional<Integer> worst(Curve ratio, Band band) {
    Integer worst = null;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      if (ratio.has(i) && (worst == null || ratio.at(i) < ratio.at(worst))) {
        worst = i;
      }
    }
    return Optional.ofNullable(worst);
  }

  private static Reason noisy(
      Channel channel, Region region, Curve ratio, int point, double limit) {
    return new Reason(
        ReasonKind.NOISY,
        channel,
        region.name(),
        Grid.hz(point),
        ratio.at(point),
        limit,
        List.of());
  }
}
