package evenpair.batches;

/**
 * Rounds to 0.001 dB for the way out: a hundredth of what any measurement here can tell, and half
 * the bytes.
 */
final class Rounded {
  private static final double STEPS = 1000;

  private Rounded() {}

  static double[] of(double[] values) {
    double[] rounded = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      rounded[i] = of(values[i]);
    }
    return rounded;
  }

  static double of(double value) {
    return Double.isNaN(value) ? Double.NaN : Math.rint(value * STEPS) / STEPS;
  }

  /**
   * @return the rounded number; null for NaN
   */
  static Double orNull(double value) {
    return Double.isNaN(value) ? null : (Double) of(value);
  }

  /**
   * @return one row of a flat array
   */
  static float[] row(float[] flat, int row, int length) {
    float[] rounded = new float[length];
    for (int i = 0; i < length; i++) {
      float value = flat[row * length + i];
      rounded[i] = Float.isNaN(value) ? Float.NaN : (float) (Math.rint(value * STEPS) / STEPS);
    }
    return rounded;
  }
}
