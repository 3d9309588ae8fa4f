package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Distortion;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.tolerance.MeasuredDistortion;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

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

  /**
   * @param alignmentDb taken out before the window is judged
   */
  @Schema(
      name = "ChannelCurve",
      description = "distortion at the excitation frequencies; null for a finished curve")
  record Channel(
      @Schema(description = "dB SPL") List<Double> levelDb,
      Double alignmentDb,
      @Schema(
              nullable = true,
              description =
                  "THD_F of orders 2 to 5; orders near their noise floor count as nothing")
          List<Double> thdPercent,
      @Schema(nullable = true, description = "by order: dB re the fundamental")
          Map<String, List<Double>> harmonicsDb,
      @Schema(nullable = true, description = "by order: what noise alone would show")
          Map<String, List<Double>> harmonicFloorsDb,
      @Schema(nullable = true, description = "orders 10 to 25 together, dB re the fundamental")
          List<Double> highOrderDb,
      @Schema(nullable = true) List<Double> highOrderFloorDb) {

    static Channel of(double[] level, double alignmentDb, Optional<MeasuredDistortion> measured) {
      if (measured.isEmpty()) {
        return new Channel(list(level), orNull(alignmentDb), null, null, null, null, null);
      }
      MeasuredDistortion distortion = measured.get();
      return new Channel(
          list(level),
          orNull(alignmentDb),
          list(thdPercent(distortion)),
          byOrder(distortion.harmonicsDb()),
          byOrder(distortion.floorsDb()),
          list(distortion.highOrderDb().toArray()),
          list(distortion.highOrderFloorDb().toArray()));
    }

    private static double[] thdPercent(MeasuredDistortion measured) {
      Distortion distortion =
          new Distortion(
              measured.harmonicsDb(),
              measured.floorsDb(),
              measured.highOrderDb(),
              measured.highOrderFloorDb());
      return IntStream.range(0, Grid.POINTS).mapToDouble(i -> 100 * distortion.thdF(i)).toArray();
    }

    private static Map<String, List<Double>> byOrder(List<Curve> curves) {
      Map<String, List<Double>> byOrder = new LinkedHashMap<>();
      for (int k = 0; k < curves.size(); k++) {
        byOrder.put(
            Integer.toString(MeasuredDistortion.LOWEST_ORDER + k), list(curves.get(k).toArray()));
      }
      return byOrder;
    }
  }

  @Schema(name = "GoldenCurve")
  record Levels(List<Double> levelDb) {}

  @Schema(name = "WindowCurves", description = "golden plus limits, dB SPL")
  record Window(List<Double> lowerDb, List<Double> upperDb) {}

  @Schema(name = "DifferenceCurve", description = "left − right, dB, and the largest allowed")
  record Difference(List<Double> levelDb, List<Double> limitDb) {}

  @Schema(
      name = "SpecifiedRange",
      description = "outside it values only compare; they do not represent an ear")
  record Simulator(String type, double specifiedFromHz, double specifiedToHz) {}

  static CurvesJson of(CurveDesk.Drawn drawn, String earSimulator) {
    JudgedCurves curves = drawn.curves();
    return new CurvesJson(
        list(curves.frequencyHz()),
        curves.smoothing(),
        Channel.of(curves.left(), curves.leftAlignmentDb(), drawn.left()),
        Channel.of(curves.right(), curves.rightAlignmentDb(), drawn.right()),
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
