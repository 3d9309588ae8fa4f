package evenpair.demo.earpiece;

/**
 * One analogue filter section of first or second order: H(s) = (b0 + b1·s + b2·s²)/(a0 + a1·s +
 * a2·s²) with s = j·f/f0. Drivers, leaks and acoustic crossovers live in continuous time; a digital
 * biquad would bend their treble.
 *
 * @param hz f0, above 0
 */
record Section(double hz, double b0, double b1, double b2, double a0, double a1, double a2) {
  Section {
    if (!(hz > 0) || !Double.isFinite(hz)) {
      throw new IllegalArgumentException("a section's frequency must be above 0 Hz, was " + hz);
    }
  }

  /** Second-order low-pass 1/(1 + s/Q + s²). */
  static Section lowPass(double hz, double q) {
    return new Section(hz, 1, 0, 0, 1, 1 / q, 1);
  }

  /** Second-order high-pass s²/(1 + s/Q + s²). */
  static Section highPass(double hz, double q) {
    return new Section(hz, 0, 0, 1, 1, 1 / q, 1);
  }

  /** First-order high-pass s/(1 + s): −3 dB at f0. */
  static Section firstOrderHighPass(double hz) {
    return new Section(hz, 0, 1, 0, 1, 1, 0);
  }

  /** First-order low shelf (g + s)/(1 + s): gain g far below f0, 1 far above. */
  static Section lowShelf(double hz, double gainDb) {
    return new Section(hz, Math.pow(10, gainDb / 20), 1, 0, 1, 1, 0);
  }

  /**
   * @return the same section at f0·factor: a crossover or a resonance moved
   */
  Section tuned(double factor) {
    return new Section(hz * factor, b0, b1, b2, a0, a1, a2);
  }

  /** Multiplies H into the response. */
  Phasors applyTo(Phasors response) {
    for (int i = 0; i < response.size(); i++) {
      double u = response.hz(i) / hz;
      double square = u * u;
      response.multiply(i, b0 - b2 * square, b1 * u).divide(i, a0 - a2 * square, a1 * u);
    }
    return response;
  }
}
