package evenpair.statistics;

/**
 * Sample quantiles by the definition that R, NumPy and spreadsheets take by default: type 7 of R.
 * J. Hyndman, Y. Fan, The American Statistician 50 (1996) 361–365. With x₁ ≤ … ≤ x_n and h = (n −
 * 1)·p: Q(p) = x_⌊h⌋₊₁ + (h − ⌊h⌋)·(x_⌊h⌋₊₂ − x_⌊h⌋₊₁). It never reaches beyond the sample, so an
 * extreme percentile of a small sample says little: see {@link #unitsNeeded}.
 */
public final class Quantiles {
  private Quantiles() {}

  /**
   * @param sorted numbers in rising order
   * @param count how many of them to look at, from the first
   * @param probability 0 … 1
   * @return the quantile; NaN if count is 0
   * @throws IllegalArgumentException if the probability lies outside 0 … 1
   */
  public static double ofSorted(double[] sorted, int count, double probability) {
    if (!(probability >= 0 && probability <= 1)) {
      throw new IllegalArgumentException(
          "a quantile needs a probability of 0 to 1, was " + probability);
    }
    if (count == 0) {
      return Double.NaN;
    }
    double place = (count - 1) * probability;
    int below = (int) place;
    int above = Math.min(below + 1, count - 1);
    return sorted[below] + (place - below) * (sorted[above] - sorted[below]);
  }

  /**
   * How large a sample must be for one number at least to be expected beyond the quantile: ⌈1 ÷
   * min(p, 1 − p)⌉. Common practice, no source: below that the percentile is hardly more than the
   * sample's extreme value.
   *
   * @param probability above 0 and below 1
   * @return 2 for the median, 200 for 0.005
   */
  public static int unitsNeeded(double probability) {
    if (!(probability > 0 && probability < 1)) {
      throw new IllegalArgumentException(
          "the probability must lie between 0 and 1, was " + probability);
    }
    double rarer = Math.min(probability, 1 - probability);
    // 1/0.005 is exactly 200 only after the rounding of 1 − 0.995 is taken out
    return (int) Math.ceil(1 / rarer - 1e-9);
  }
}
