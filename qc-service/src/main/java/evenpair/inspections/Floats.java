package evenpair.inspections;

/** Between stored 32-bit floats and the doubles that are computed with. */
final class Floats {
  private Floats() {}

  static double[] widen(float[] values) {
    double[] wide = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      wide[i] = values[i];
    }
    return wide;
  }

  static float[] narrow(double[] values) {
    float[] narrow = new float[values.length];
    for (int i = 0; i < values.length; i++) {
      narrow[i] = (float) values[i];
    }
    return narrow;
  }
}
