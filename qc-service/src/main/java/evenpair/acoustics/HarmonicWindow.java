package evenpair.acoustics;

/**
 * Cuts harmonic n out of a deconvolved impulse response, where it arrives L·ln n before the linear
 * part, and gives its power at n times the excitation frequency. The window runs from 0.3 of the
 * gap to order n + 1 before its arrival to 0.7 of the gap to order n − 1 after it, half-cosine over
 * half of each side.
 */
final class HarmonicWindow {
  private static final double FRONT = 0.3;
  private static final double BACK = 0.7;

  /** The window is padded to four times its length, so that narrow bands lie between close bins. */
  private static final int PADDING = 4;

  private final int order;
  private final double rateHz;
  private final int advance;
  private final int front;
  private final double[] weights;
  private final double energy;
  private final Fourier fourier;

  /**
   * @param order 2 or above
   */
  HarmonicWindow(Sweep sweep, int order) {
    this.order = order;
    rateHz = sweep.rateHz();
    double rate = sweep.rate() * rateHz;
    advance = (int) Math.round(rate * Math.log(order));
    front = (int) Math.ceil(FRONT * rate * Math.log((order + 1.0) / order));
    int back = (int) Math.ceil(BACK * rate * Math.log(order / (order - 1.0)));
    weights = new double[front + back];
    double sum = 0;
    for (int n = 0; n < weights.length; n++) {
      double rise = half(n / (front / 2.0));
      double fall = half((weights.length - n) / (back / 2.0));
      weights[n] = rise * fall;
      sum += weights[n] * weights[n];
    }
    energy = sum;
    fourier = new Fourier(PADDING * weights.length);
  }

  int order() {
    return order;
  }

  /**
   * @return Σ w²: what the window leaves of a white noise's power
   */
  double energy() {
    return energy;
  }

  /**
   * @param circular the impulse response
   * @param peak index of the linear arrival
   * @return the harmonic's power spectrum over the frequency at which it sounds
   */
  BandPower power(double[] circular, int peak) {
    double[] packed = new double[fourier.length()];
    int start = peak - advance - front;
    for (int n = 0; n < weights.length; n++) {
      packed[n] = weights[n] * circular[Math.floorMod(start + n, circular.length)];
    }
    fourier.forward(packed);
    return new BandPower(Fourier.power(packed), rateHz / fourier.length());
  }

  private static double half(double part) {
    return part >= 1 ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * part);
  }
}
