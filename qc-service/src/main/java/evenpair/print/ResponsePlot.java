package evenpair.print;

import java.util.List;

/**
 * What the paper plot of one inspection shows; drawn as vector graphics. Arrays have 241 values, NaN where absent.
 *
 * @param left level of the left channel, dB SPL
 * @param right level of the right channel, dB SPL
 * @param golden golden response shown with the alignment band's offset taken out of the channels by the caller
 * @param lower lower edge of the window, dB SPL
 * @param upper upper edge of the window, dB SPL
 * @param difference left − right, dB
 * @param matchLimit largest allowed |left − right|, dB
 * @param specifiedFromHz lower end of the ear simulator's specified range; outside it the ground is hatched
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

  /** @param failed true: the region is tinted */
  public record PlotRegion(String name, double fromHz, double toHz, boolean failed) {}
}
