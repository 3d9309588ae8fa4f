package evenpair.statistics;

import java.util.Arrays;

/**
 * Control chart of single values with their moving range.
 *
 * <p>Limits: mean ± 3·MR̄/d₂ with d₂(2) = 2/√π, the mean of |x − y| of two standard normal numbers;
 * upper limit of the moving range MR̄·(1 + 3·d₃/d₂) with d₃(2) = √(2 − 4/π), its standard
 * deviation. Both are closed forms, worked out here.
 *
 * @param mean of all values
 * @param meanMovingRange MR̄
 */
public record IndividualsChart(double mean, double meanMovingRange) {
  private static final double D2 = 2 / Math.sqrt(Math.PI);
  private static final double D3 = Math.sqrt(2 - 4 / Math.PI);

  /**
   * @param values in the order measured, two at least, finite
   * @throws IllegalArgumentException if there are fewer or one is not finite
   */
  public static IndividualsChart of(double... values) {
    if (values.length < 2) {
      throw new IllegalArgumentException(
          "a moving range needs two values, was given " + values.length);
    }
    if (!Arrays.stream(values).allMatch(Double::isFinite)) {
      throw new IllegalArgumentException("values must be finite");
    }
    double ranges = 0;
    for (int i = 1; i < values.length; i++) {
      ranges += Math.abs(values[i] - values[i - 1]);
    }
    return new IndividualsChart(
        Arrays.stream(values).average().orElseThrow(), ranges / (values.length - 1));
  }

  /**
   * @return MR̄/d₂, the standard deviation from one value to the next
   */
  public double sigma() {
    return meanMovingRange / D2;
  }

  public double lower() {
    return mean - 3 * sigma();
  }

  public double upper() {
    return mean + 3 * sigma();
  }

  /**
   * @return upper limit of the moving range; its lower one is 0
   */
  public double movingRangeUpper() {
    return meanMovingRange * (1 + 3 * D3 / D2);
  }

  /**
   * @return true if the value lies outside the limits
   */
  public boolean signals(double value) {
    return value < lower() || value > upper();
  }
}
