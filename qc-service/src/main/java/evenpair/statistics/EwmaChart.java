package evenpair.statistics;

/**
 * Exponentially weighted moving average: z_t = λ·x_t + (1 − λ)·z_(t−1) from the centre. Limits
 * centre ± k·σ·√(λ/(2 − λ)·(1 − (1 − λ)^(2t))), exact at each t. It finds a lasting shift of about
 * one standard deviation sooner than single values do. Source: S. W. Roberts, Technometrics 1
 * (1959) 239–250 (from memory).
 */
public final class EwmaChart {
  private EwmaChart() {}

  /**
   * @param values in order, finite
   * @param centre where the process should be
   * @param sigma standard deviation of one value, above 0
   * @param lambda weight of the newest value, above 0 up to 1
   * @param k limits in standard deviations
   */
  public static ControlChart of(
      double[] values, double centre, double sigma, double lambda, double k) {
    if (!(lambda > 0 && lambda <= 1) || !(sigma > 0) || !(k > 0)) {
      throw new IllegalArgumentException(
          "λ must lie in 0 … 1, σ and k above 0; were %s, %s, %s".formatted(lambda, sigma, k));
    }
    double[] points = new double[values.length];
    double[] lower = new double[values.length];
    double[] upper = new double[values.length];
    double last = centre;
    double kept = 1;
    for (int t = 0; t < values.length; t++) {
      last = lambda * values[t] + (1 - lambda) * last;
      kept *= (1 - lambda) * (1 - lambda);
      double half = k * sigma * Math.sqrt(lambda / (2 - lambda) * (1 - kept));
      points[t] = last;
      lower[t] = centre - half;
      upper[t] = centre + half;
    }
    return new ControlChart(points, centre, lower, upper);
  }
}
