package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Distortion;
import evenpair.acoustics.Grid;
import evenpair.tolerance.MeasuredDistortion;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Distortion of one channel exactly as stored: 32-bit floats in dB re the fundamental, NaN where
 * absent.
 *
 * @param harmonicsDb orders 2 to 5, 241 values each, one after the other
 * @param floorsDb each order's noise floor, laid out alike
 * @param highOrderDb power sum of orders 10 to 25
 * @param highOrderFloorDb its noise floor
 */
record StoredDistortion(
    float[] harmonicsDb, float[] floorsDb, float[] highOrderDb, float[] highOrderFloorDb) {
  private static final int ORDERS =
      MeasuredDistortion.HIGHEST_ORDER - MeasuredDistortion.LOWEST_ORDER + 1;

  static StoredDistortion of(Distortion distortion) {
    return new StoredDistortion(
        flat(distortion.harmonics()),
        flat(distortion.floors()),
        distortion.highOrder().toFloats(),
        distortion.highOrderFloor().toFloats());
  }

  /**
   * @return the mean in dB of several seatings, order by order and point by point
   */
  static MeasuredDistortion mean(List<StoredDistortion> seatings) {
    List<Curve> harmonics = new ArrayList<>();
    List<Curve> floors = new ArrayList<>();
    for (int order = 0; order < ORDERS; order++) {
      int at = order;
      harmonics.add(Curve.mean(seatings.stream().map(s -> slice(s.harmonicsDb, at)).toList()));
      floors.add(Curve.mean(seatings.stream().map(s -> slice(s.floorsDb, at)).toList()));
    }
    return new MeasuredDistortion(
        harmonics,
        floors,
        Curve.mean(seatings.stream().map(s -> Curve.ofFloats(s.highOrderDb)).toList()),
        Curve.mean(seatings.stream().map(s -> Curve.ofFloats(s.highOrderFloorDb)).toList()));
  }

  private static float[] flat(List<Curve> curves) {
    float[] flat = new float[ORDERS * Grid.POINTS];
    for (int order = 0; order < ORDERS; order++) {
      System.arraycopy(curves.get(order).toFloats(), 0, flat, order * Grid.POINTS, Grid.POINTS);
    }
    return flat;
  }

  private static Curve slice(float[] flat, int order) {
    return Curve.ofFloats(Arrays.copyOfRange(flat, order * Grid.POINTS, (order + 1) * Grid.POINTS));
  }
}
