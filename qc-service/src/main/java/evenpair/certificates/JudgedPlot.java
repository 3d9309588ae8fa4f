package evenpair.certificates;

import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.print.ResponsePlot;
import java.util.Arrays;

/** The paper plot of a pair as it was judged. */
public final class JudgedPlot {
  private JudgedPlot() {}

  /**
   * The channels are moved by their own level, as judging does, so that they lie inside the window
   * they were judged by; left − right is not moved.
   */
  public static ResponsePlot of(JudgedCurves curves) {
    return new ResponsePlot(
        curves.frequencyHz(),
        minus(curves.left(), curves.leftAlignmentDb()),
        minus(curves.right(), curves.rightAlignmentDb()),
        curves.golden(),
        curves.lower(),
        curves.upper(),
        curves.difference(),
        curves.matchLimit(),
        curves.regions().stream()
            .map(r -> new ResponsePlot.PlotRegion(r.name(), r.fromHz(), r.toHz(), false))
            .toList(),
        curves.specifiedFromHz(),
        curves.specifiedToHz());
  }

  private static double[] minus(double[] levels, double offset) {
    return Arrays.stream(levels).map(level -> level - offset).toArray();
  }
}
