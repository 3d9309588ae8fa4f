package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;

/**
 * A region's lower and upper limit at each of its grid points.
 *
 * @param first index of the first point
 * @param lower dB
 * @param upper dB
 */
record RegionEdges(int first, double[] lower, double[] upper) {
  static RegionEdges of(Region region) {
    return of(region, region.lower(), region.upper(), 1);
  }

  /** ± the match limit. */
  static RegionEdges ofMatch(Region region) {
    Span match = region.match().orElseThrow();
    return of(region, match, match, -1);
  }

  private static RegionEdges of(Region region, Span lower, Span upper, int lowerSign) {
    int first = region.band().firstIndex();
    int points = region.band().lastIndex() - first + 1;
    RegionEdges edges = new RegionEdges(first, new double[points], new double[points]);
    for (int i = 0; i < points; i++) {
      double hz = Grid.hz(first + i);
      edges.lower[i] = lowerSign * lower.at(hz, region.band());
      edges.upper[i] = upper.at(hz, region.band());
    }
    return edges;
  }

  int points() {
    return lower.length;
  }
}
