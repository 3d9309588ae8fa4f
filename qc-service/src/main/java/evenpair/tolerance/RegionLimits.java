package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * One region's limits worked out at its grid points, so that judging a pair is subtraction and
 * comparison only.
 */
final class RegionLimits {
  private final Region region;
  private final int first;
  private final double[] lower;
  private final double[] upper;
  private final Optional<double[]> match;

  RegionLimits(Region region) {
    this.region = region;
    this.first = region.band().firstIndex();
    if (region.band().points() == 0) {
      throw new IllegalArgumentException("region " + region.name() + " holds no grid point");
    }
    this.lower = spread(region.lower());
    this.upper = spread(region.upper());
    this.match = region.match().map(this::spread);
  }

  private double[] spread(Span span) {
    return IntStream.range(first, first + region.band().points())
        .mapToDouble(i -> span.at(Grid.hz(i), region.band()))
        .toArray();
  }

  String name() {
    return region.name();
  }

  Region region() {
    return region;
  }

  boolean hasMatch() {
    return match.isPresent();
  }

  /**
   * @return the first grid index of the region at which the curve is absent; empty if it covers the
   *     region
   */
  Optional<Integer> firstGap(Curve curve) {
    return IntStream.range(first, first + lower.length)
        .filter(i -> !curve.has(i))
        .boxed()
        .findFirst();
  }

  /**
   * @param deviation d_c = L_c − G − a_c, dB, present over the whole region, as are the guard bands
   */
  Worst window(Curve deviation, Guard guard) {
    Worst worst = Worst.NONE;
    for (int k = 0; k < lower.length; k++) {
      worst = worst.or(windowAt(k, deviation, guard));
    }
    return worst;
  }

  private Margin windowAt(int k, Curve deviation, Guard guard) {
    double halfWidth = (upper[k] - lower[k]) / 2;
    int i = first + k;
    return Margin.inside(i, deviation.at(i), lower[k], upper[k], halfWidth, guard.level(i));
  }

  /**
   * @param difference L_L − L_R, dB, present over the whole region, as are the guard bands
   * @return values and limits keep the difference's sign
   */
  Worst match(Curve difference, Guard guard) {
    double[] limits = match.orElseThrow();
    Worst worst = Worst.NONE;
    for (int k = 0; k < limits.length; k++) {
      int i = first + k;
      worst = worst.or(Margin.within(i, difference.at(i), limits[k], guard.match(i)));
    }
    return worst;
  }

  /**
   * @return true if the window is not kept at a point that the alignment band holds too
   */
  boolean leavesWindowInside(Band band, Curve deviation, Guard guard) {
    return IntStream.range(0, lower.length)
        .filter(k -> band.holds(first + k))
        .anyMatch(k -> guard.rejects(windowAt(k, deviation, guard).state()));
  }

  /**
   * @return the first grid index at which a guard band of window or match is not known
   */
  Optional<Integer> firstUnguarded(Guard guard) {
    return IntStream.range(first, first + lower.length)
        .filter(
            i -> Double.isNaN(guard.level(i)) || match.isPresent() && Double.isNaN(guard.match(i)))
        .boxed()
        .findFirst();
  }

  /**
   * @return the first point at which twice the guard band is wider than the window, or the guard
   *     band is wider than the match limit: its value is w, its limit what w must not exceed
   */
  Optional<Margin> guardedAway(Guard guard) {
    return IntStream.range(0, lower.length)
        .boxed()
        .flatMap(k -> roomAt(k, guard))
        .filter(room -> room.db() < 0)
        .findFirst();
  }

  private Stream<Margin> roomAt(int k, Guard guard) {
    int i = first + k;
    double halfWidth = (upper[k] - lower[k]) / 2;
    Margin window = Margin.below(i, guard.level(i), halfWidth, halfWidth);
    return match.isEmpty()
        ? Stream.of(window)
        : Stream.of(window, Margin.below(i, guard.match(i), match.get()[k], match.get()[k]));
  }
}
