package evenpair.products;

import java.sql.Array;
import java.sql.SQLException;

/** Curves between the database's {@code real[]} and Java. */
final class RealArrays {
  private RealArrays() {}

  /**
   * @return the array's values; none of them may be null
   */
  static float[] floats(Array array) {
    try {
      Float[] boxed = (Float[]) array.getArray();
      float[] values = new float[boxed.length];
      for (int i = 0; i < values.length; i++) {
        values[i] = boxed[i];
      }
      return values;
    } catch (SQLException e) {
      throw new IllegalStateException("a stored curve cannot be read", e);
    }
  }

  static double[] widened(float[] values) {
    double[] wide = new double[values.length];
    for (int i = 0; i < wide.length; i++) {
      wide[i] = values[i];
    }
    return wide;
  }

  static float[] narrowed(double[] values) {
    float[] narrow = new float[values.length];
    for (int i = 0; i < narrow.length; i++) {
      narrow[i] = (float) values[i];
    }
    return narrow;
  }
}
