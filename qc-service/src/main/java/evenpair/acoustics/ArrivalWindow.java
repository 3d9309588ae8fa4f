package evenpair.acoustics;

/**
 * The window around the linear arrival: flat from half of its front to 250 ms after, with
 * half-cosine ends. The front takes 0.3 of the gap to the second harmonic, L·ln 2, so that neither
 * that harmonic nor its decay enters.
 */
final class ArrivalWindow {
  private static final double FRONT_OF_GAP = 0.3;
  private static final double FLAT_BACK_SECONDS = 0.250;
  private static final double BACK_END_SECONDS = 0.050;

  private final int front;
  private final double[] weights;
  private final double energy;

  ArrivalWindow(Sweep sweep) {
    double rate = sweep.rateHz();
    front = Math.max(2, (int) Math.round(FRONT_OF_GAP * sweep.rate() * Math.log(2) * rate));
    int flat = (int) Math.ceil(FLAT_BACK_SECONDS * rate);
    int end = (int) Math.round(BACK_END_SECONDS * rate);
    weights = new double[front + flat + end];
    double sum = 0;
    for (int n = 0; n < weights.length; n++) {
      weights[n] = weight(n, front / 2, end);
      sum += weights[n] * weights[n];
    }
    energy = sum;
  }

  /**
   * @return samples from the window's first one to its last
   */
  int length() {
    return weights.length;
  }

  /**
   * @return samples before the arrival
   */
  int front() {
    return front;
  }

  /**
   * @return Σ w²: what the window leaves of a white noise's power
   */
  double energy() {
    return energy;
  }

  /**
   * Cuts the response out of a circular impulse response.
   *
   * @param circular the impulse response
   * @param arrival index of the arrival
   * @param target zeros, at least as long as the window; the arrival comes to index 0, what lies
   *     before it to the end
   */
  void cut(double[] circular, int arrival, double[] target) {
    for (int n = 0; n < weights.length; n++) {
      int from = Math.floorMod(arrival + n - front, circular.length);
      target[Math.floorMod(n - front, target.length)] = weights[n] * circular[from];
    }
  }

  private double weight(int n, int rising, int falling) {
    int toEnd = weights.length - n;
    if (n < rising) {
      return 0.5 - 0.5 * Math.cos(Math.PI * n / rising);
    }
    return toEnd >= falling ? 1 : 0.5 - 0.5 * Math.cos(Math.PI * toEnd / falling);
  }
}
