package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * Each unit of a batch once, by its first closed inspection: what later rework, audits and returns
 * found says nothing of how the line made it. Curves are flat arrays, one row of 241 values a unit
 * that has curves; NaN where a point is absent.
 *
 * @param units in production order, one for each serial
 * @param drawn those of them that have curves; the row of a unit's curves is its place in this list
 * @param leftLevel dB SPL
 * @param leftDeviation d_L = L − G − a_L, dB
 * @param difference L_L − L_R, dB
 * @param leftAlignment a_L of each drawn unit, dB
 * @param further how many later inspections of the same units were left out
 */
record FirstPass(
    List<BatchUnit> units,
    List<BatchUnit> drawn,
    float[] leftLevel,
    float[] rightLevel,
    float[] leftDeviation,
    float[] rightDeviation,
    float[] difference,
    double[] leftAlignment,
    double[] rightAlignment,
    int further) {

  static FirstPass of(BatchCurves batch) {
    Map<String, BatchUnit> first = new LinkedHashMap<>();
    batch.units().forEach(unit -> first.putIfAbsent(unit.serial(), unit));
    List<BatchUnit> units = List.copyOf(first.values());
    List<BatchUnit> drawn = units.stream().filter(unit -> unit.row() >= 0).toList();
    float[] left = rows(batch.left(), drawn);
    float[] right = rows(batch.right(), drawn);
    return new FirstPass(
        units,
        drawn,
        left,
        right,
        deviations(left, batch.golden(), batch.leftAlignment(), drawn),
        deviations(right, batch.golden(), batch.rightAlignment(), drawn),
        differences(left, right),
        chosen(batch.leftAlignment(), drawn),
        chosen(batch.rightAlignment(), drawn),
        batch.units().size() - units.size());
  }

  /**
   * @return curves alone, of units that nobody asks the names of
   */
  static FirstPass ofCurves(
      float[] leftDeviation,
      float[] rightDeviation,
      float[] difference,
      double[] leftAlignment,
      double[] rightAlignment) {
    float[] none = new float[0];
    return new FirstPass(
        List.of(),
        List.of(),
        none,
        none,
        leftDeviation,
        rightDeviation,
        difference,
        leftAlignment,
        rightAlignment,
        0);
  }

  private static float[] rows(float[] all, List<BatchUnit> drawn) {
    float[] chosen = new float[drawn.size() * Grid.POINTS];
    for (int row = 0; row < drawn.size(); row++) {
      System.arraycopy(
          all, drawn.get(row).row() * Grid.POINTS, chosen, row * Grid.POINTS, Grid.POINTS);
    }
    return chosen;
  }

  private static double[] chosen(double[] all, List<BatchUnit> drawn) {
    return drawn.stream().mapToDouble(unit -> all[unit.row()]).toArray();
  }

  private static float[] deviations(
      float[] levels, double[] golden, double[] alignment, List<BatchUnit> drawn) {
    float[] deviations = new float[levels.length];
    for (int row = 0; row < drawn.size(); row++) {
      double offset = alignment[drawn.get(row).row()];
      for (int i = 0; i < Grid.POINTS; i++) {
        int at = row * Grid.POINTS + i;
        deviations[at] = (float) (levels[at] - golden[i] - offset);
      }
    }
    return deviations;
  }

  private static float[] differences(float[] left, float[] right) {
    float[] differences = new float[left.length];
    for (int at = 0; at < left.length; at++) {
      differences[at] = left[at] - right[at];
    }
    return differences;
  }
}
