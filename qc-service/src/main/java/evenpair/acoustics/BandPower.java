package evenpair.acoustics;

/**
 * Means of a power spectrum over bands: the cumulative trapezoid over the bins, carried on to the
 * band's edges inside their bins, so that a band narrower than a bin still has the mean of the line
 * through its neighbours.
 */
final class BandPower {
  private final double[] power;
  private final double[] cumulative;
  private final double binHz;

  /**
   * @param power at 0, binHz, 2·binHz … ; two bins at least
   * @param binHz spacing, above 0
   */
  BandPower(double[] power, double binHz) {
    this.power = power;
    this.binHz = binHz;
    cumulative = new double[power.length];
    for (int k = 1; k < power.length; k++) {
      cumulative[k] = cumulative[k - 1] + 0.5 * (power[k - 1] + power[k]);
    }
  }

  /**
   * @param fromHz lower edge, 0 or above
   * @param toHz upper edge, above the lower one and inside the spectrum
   * @return (1/(to−from))·∫ power df
   */
  double mean(double fromHz, double toHz) {
    return (until(toHz / binHz) - until(fromHz / binHz)) / (toHz / binHz - fromHz / binHz);
  }

  private double until(double bin) {
    int k = Math.min((int) bin, power.length - 2);
    double rest = bin - k;
    return cumulative[k] + rest * (power[k] + 0.5 * rest * (power[k + 1] - power[k]));
  }
}
