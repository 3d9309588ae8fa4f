package evenpair.print;

import java.util.List;
import java.util.stream.Stream;

/**
 * What the paper plot of one inspection shows; drawn as vector graphics. Arrays have 241 values,
 * NaN where absent.
 *
 * @param frequencyHz the grid, Hz, rising
 * @param left level of the left channel, dB SPL, its alignment offset taken out by the caller so
 *     that it lies as judged
 * @param right level of the right channel, dB SPL, its alignment offset taken out likewise
 * @param golden golden response, dB SPL
 * @param lower lower edge of the window, dB SPL
 * @param upper upper edge of the window, dB SPL
 * @param difference left − right, dB, offsets left in
 * @param matchLimit largest allowed |left − right|, dB
 * @param regions named along the top edge
 * @param specifiedFromHz lower end of the ear simulator's specified range; outside it the ground is
 *     hatched
 * @param specifiedToHz its upper end
 */
public record ResponsePlot(
    double[] frequencyHz,
    double[] left,
    double[] right,
    double[] golden,
    double[] lower,
    double[] upper,
    double[] difference,
    double[] matchLimit,
    List<PlotRegion> regions,
    double specifiedFromHz,
    double specifiedToHz) {

  /**
   * @throws IllegalArgumentException if the arrays differ in length
   */
  public ResponsePlot {
    regions = List.copyOf(regions);
    int points = frequencyHz.length;
    if (Stream.of(left, right, golden, lower, upper, difference, matchLimit)
        .anyMatch(curve -> curve.length != points)) {
      throw new IllegalArgumentException("every curve of a plot needs " + points + " points");
    }
  }

  /**
   * The rounded ends of a region may lie a little inside an exact grid point: half a grid step is
   * allowed for.
   */
  boolean inARegion(int index) {
    double half = Math.pow(10, 1.0 / 160);
    double hz = frequencyHz[index];
    return regions.stream()
        .anyMatch(region -> hz >= region.fromHz() / half && hz <= region.toHz() * half);
  }

  /**
   * @param failed true: the region is tinted
   */
  public record PlotRegion(String name, double fromHz, double toHz, boolean failed) {}
}
