package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Optional;
import java.util.stream.IntStream;

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
   * @param deviation d_c = L_c − G − a_c, dB, present over the whole region
   * @return the point nearest to (or farthest beyond) the window
   */
  Margin window(Curve deviation) {
    Margin worst = null;
    for (int k = 0; k < lower.length; k++) {
      double halfWidth = (upper[k] - lower[k]) / 2;
      worst =
          Margin.smaller(
              worst,
              Margin.inside(first + k, deviation.at(first + k), lower[k], upper[k], halfWidth));
    }
    return worst;
  }

  /**
   * @param difference L_L − L_R, dB, present over the whole region
   * @return the point nearest to (or farthest beyond) the match limit; its value and limit keep the
   *     difference's sign
   */
  Margin match(Curve difference) {
    double[] limits = match.orElseThrow();
    Margin worst = null;
    for (int k = 0; k < limits.length; k++) {
      worst = Margin.smaller(worst, Margin.within(first + k, difference.at(first + k), limits[k]));
    }
    return worst;
  }

  /**
   * @return true if the deviation leaves the window at a point that the alignment band holds too
   */
  boolean leavesWindowInside(Band band, Curve deviation) {
    return IntStream.range(0, lower.length)
        .filter(k -> band.holds(first + k))
        .anyMatch(k -> deviation.at(first + k) < lower[k] || deviation.at(first + k) > upper[k]);
  }
}
