package evenpair.inspections;

import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.RegionSpan;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Arrays;
import java.util.List;

/** The JSON of an inspection's curves: 241 values each, null where absent. */
@Schema(name = "InspectionCurves")
record CurvesJson(
    List<Double> frequencyHz,
    @Schema(example = "1/12 octave") String smoothing,
    Channel left,
    Channel right,
    Levels golden,
    Window windows,
    Difference difference,
    List<RegionSpan> regions,
    Simulator earSimulator) {

  /** @param thdPercent null: distortion is not measured @param alignmentDb taken out before the window is judged */
  @Schema(name = "ChannelCurve")
  record Channel(
      @Schema(description = "dB SPL") List<Double> levelDb,
      @Schema(nullable = true) List<Double> thdPercent,
      Double alignmentDb) {}

  @Schema(name = "GoldenCurve")
  record Levels(List<Double> levelDb) {}

  @Schema(name = "WindowCurves", description = "golden plus limits, dB SPL")
  record Window(List<Double> lowerDb, List<Double> upperDb) {}

  @Schema(name = "DifferenceCurve", description = "left − right, dB, and the largest allowed")
  record Difference(List<Double> levelDb, List<Double> limitDb) {}

  @Schema(name = "SpecifiedRange", description = "outside it values only compare; they do not represent an ear")
  record Simulator(String type, double specifiedFromHz, double specifiedToHz) {}

  static CurvesJson of(JudgedCurves curves, String earSimulator) {
    return new CurvesJson(
        list(curves.frequencyHz()),
        curves.smoothing(),
        new Channel(list(curves.left()), null, orNull(curves.leftAlignmentDb())),
        new Channel(list(curves.right()), null, orNull(curves.rightAlignmentDb())),
        new Levels(list(curves.golden())),
        new Window(list(curves.lower()), list(curves.upper())),
        new Difference(list(curves.difference()), list(curves.matchLimit())),
        curves.regions(),
        new Simulator(earSimulator, curves.specifiedFromHz(), curves.specifiedToHz()));
  }

  private static List<Double> list(double[] values) {
    return Arrays.stream(values).mapToObj(CurvesJson::orNull).toList();
  }

  private static Double orNull(double value) {
    return Double.isNaN(value) ? null : value;
  }
}
