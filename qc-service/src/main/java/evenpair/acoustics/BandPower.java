package evenpair.acoustics;

/**
 * Means of a power spectrum over bands: trapezoids between the bins, carried on to the band's edges
 * inside their bins, so that a band narrower than a bin still has the mean of the line through its
 * neighbours. Each band is summed by itself: differences of one running sum would lose a band that
 * lies 150 dB below another.
 */
final class BandPower {
  private final double[] power;
  private final double binHz;

  /**
   * @param power at 0, binHz, 2·binHz … ; two bins at least; kept, not copied
   * @param binHz spacing, above 0
   */
  BandPower(double[] power, double binHz) {
    this.power = power;
    this.binHz = binHz;
  }

  /**
   * @param fromHz lower edge, 0 or above
   * @param toHz upper edge, above the lower one and inside the spectrum
   * @return (1/(to−from))·∫ power df
   */
  double mean(double fromHz, double toHz) {
    double from = fromHz / binHz;
    double to = toHz / binHz;
    int first = (int) Math.ceil(from);
    int last = Math.min((int) to, power.length - 1);
    if (first > last) {
      return 0.5 * (at(from) + at(to));
    }
    double area = 0.5 * (at(from) + power[first]) * (first - from);
    for (int k = first; k < last; k++) {
      area += 0.5 * (power[k] + power[k + 1]);
    }
    area += 0.5 * (power[last] + at(to)) * (to - last);
    return area / (to - from);
  }

  private double at(double bin) {
    int k = Math.min((int) bin, power.length - 2);
    return power[k] + (bin - k) * (power[k + 1] - power[k]);
  }
}
