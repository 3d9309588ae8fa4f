package evenpair.batches;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.statistics.RobustColumns;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * One curve against another: where, by region, they differ most.
 *
 * @param difference this − that, dB, absent where either is
 * @param offsetDb its median over the grid, dB; NaN if they share no point
 * @param largest one for each region that holds a shared point
 */
record CurveComparison(Curve difference, double offsetDb, List<Largest> largest) {
  /**
   * @param at grid index @param db this − that there, signed
   */
  record Largest(NamedBand region, int at, double db) {}

  record NamedBand(String name, Band band) {}

  static CurveComparison of(Curve one, Curve other, List<NamedBand> regions) {
    Curve difference = one.minus(other);
    double[] present =
        IntStream.range(0, Grid.POINTS)
            .filter(difference::has)
            .mapToDouble(difference::at)
            .toArray();
    List<Largest> largest = new ArrayList<>();
    for (NamedBand region : regions) {
      largest(difference, region).ifPresent(largest::add);
    }
    return new CurveComparison(difference, RobustColumns.median(present), largest);
  }

  private static Optional<Largest> largest(Curve difference, NamedBand region) {
    return IntStream.rangeClosed(region.band().firstIndex(), region.band().lastIndex())
        .filter(difference::has)
        .boxed()
        .max((a, b) -> Double.compare(Math.abs(difference.at(a)), Math.abs(difference.at(b))))
        .map(at -> new Largest(region, at, difference.at(at)));
  }
}
