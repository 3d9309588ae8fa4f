package evenpair.acoustics;

/**
 * One channel of recorded or rendered sound: full scale is ±1. The array is shared, not copied: do
 * not write to it.
 *
 * @param values samples, finite (the reader refuses NaN before this)
 * @param rateHz samples a second, above 0
 */
public record Samples(float[] values, double rateHz) {
  /**
   * @throws IllegalArgumentException if the rate is not above 0
   */
  public Samples {
    if (!(rateHz > 0) || !Double.isFinite(rateHz)) {
      throw new IllegalArgumentException("sample rate must be above 0 Hz, was " + rateHz);
    }
  }

  /**
   * @return length in seconds
   */
  public double seconds() {
    return values.length / rateHz;
  }
}
