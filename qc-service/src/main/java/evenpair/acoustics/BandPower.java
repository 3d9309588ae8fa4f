package evenpair.acoustics;

/**
 * Means of a power spectrum over bands: trapezoids between the bins, bent by the local second
 * difference and carried on to the band's edges inside their bins, so that they hold for a band
 * narrower than a bin. Each band is summed by itself: differences of one running sum would lose a
 * band that lies 150 dB below another.
 */
final class BandPower {
  private final double[] power;
  private final double binHz;

  /**
   * @param power at 0, binHz, 2·binHz … ; four bins at least; kept, not copied
   * @param binHz spacing, above 0
   */
  BandPower(double[] power, double binHz) {
    this.power = power;
    this.binHz = binHz;
  }

  /**
   * @return the frequency at which the spectrum ends
   */
  double toHz() {
    return (power.length - 1) * binHz;
  }

  /**
   * @param fromHz lower edge, 0 or above
   * @param toHz upper edge, above the lower one and inside the spectrum
   * @return (1/(to−from))·∫ power df
   */
  double mean(double fromHz, double toHz) {
    double from = fromHz / binHz;
    double to = toHz / binHz;
    double bent = area(from, to, 1);
    // beside a cliff the bend may overshoot below nothing; straight lines never do
    return (bent > 0 ? bent : area(from, to, 0)) / (to - from);
  }

  private double area(double from, double to, int bend) {
    int first = bin(from);
    int last = bin(to);
    double ends = piece(last, to - last, bend) - piece(first, from - first, bend);
    return ends + whole(first, last, bend);
  }

  /**
   * ∫ over whole bins: the sum of {@code piece(k, 1, bend)}. The second differences of neighbours
   * cancel but for those at the two ends.
   */
  private double whole(int first, int last, int bend) {
    int from = Math.max(1, first);
    int to = Math.max(from, last);
    double area = first < from && last > first ? piece(first, 1, bend) : 0;
    double sum = 0.5 * (power[to] - power[from]);
    for (int k = from; k < to; k++) {
      sum += power[k];
    }
    double bends = slope(to) + slope(to - 1) - slope(from) - slope(from - 1);
    return area + sum - bend * bends / 24;
  }

  private double slope(int k) {
    return power[k + 1] - power[k];
  }

  /** ∫ from bin k to k + x, 0 ≤ x ≤ 1, of the line through both bins less x·(1−x)/2·p″. */
  private double piece(int k, double x, int bend) {
    double line = x * power[k] + 0.5 * x * x * (power[k + 1] - power[k]);
    return line - bend * (x * x / 4 - x * x * x / 6) * secondDifference(k);
  }

  /** Mean of the second differences at bins k and k + 1. */
  private double secondDifference(int k) {
    if (k == 0 || k + 2 >= power.length) {
      return 0;
    }
    return 0.5 * (power[k - 1] - power[k] - power[k + 1] + power[k + 2]);
  }

  private int bin(double place) {
    return Math.min((int) place, power.length - 2);
  }
}
