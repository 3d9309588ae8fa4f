package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How far the valid seatings of a unit lie apart in one region: highest less lowest level at the
 * point where that is largest, smoothed as judged. A range and not a standard deviation: there are
 * two or three seatings.
 *
 * @param db dB, 0 or above
 * @param atHz where
 */
record Spread(String region, Channel channel, double db, double atHz) {
  /**
   * @return by region and channel; empty for a single seating, regions without data left out
   */
  static List<Spread> of(List<StoredPair> seatings, LimitSet set) {
    List<Spread> spreads = new ArrayList<>();
    if (seatings.size() > 1) {
      for (Channel channel : Channel.values()) {
        Curve range = range(seatings, channel, set.smoothing());
        for (Region region : set.regions()) {
          widest(range, region)
              .ifPresent(
                  i -> spreads.add(new Spread(region.name(), channel, range.at(i), Grid.hz(i))));
        }
      }
    }
    return List.copyOf(spreads);
  }

  private static Curve range(List<StoredPair> seatings, Channel channel, Smoothing smoothing) {
    List<double[]> levels =
        seatings.stream()
            .map(seating -> smoothing.apply(seating.of(channel).level()).toArray())
            .toList();
    return Curve.of(IntStream.range(0, Grid.POINTS).mapToDouble(i -> range(levels, i)).toArray());
  }

  /** Math.max and Math.min hand a NaN on: absent in one seating is absent. */
  private static double range(List<double[]> levels, int point) {
    double highest =
        levels.stream()
            .mapToDouble(level -> level[point])
            .reduce(Double.NEGATIVE_INFINITY, Math::max);
    double lowest =
        levels.stream()
            .mapToDouble(level -> level[point])
            .reduce(Double.POSITIVE_INFINITY, Math::min);
    return highest - lowest;
  }

  private static Optional<Integer> widest(Curve range, Region region) {
    return IntStream.rangeClosed(region.band().firstIndex(), region.band().lastIndex())
        .filter(range::has)
        .boxed()
        .max((a, b) -> Double.compare(range.at(a), range.at(b)));
  }
}
