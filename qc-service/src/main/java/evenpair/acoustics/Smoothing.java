package evenpair.acoustics;

/**
 * Smoothing of a stored 1/24-octave curve to a fractional-octave one: the power mean L = 10·lg(Σ
 * w·10^(L_i/10) / Σ w) with the weights below; at the grid's ends, and beside absent points, over
 * what is there.
 */
public enum Smoothing {
  /** The stored curve itself. */
  NONE("none"),
  /** Weights ½ 1 ½. */
  TWELFTH_OCTAVE("1/12 octave", 0.5, 1, 0.5),
  /** Weights ½ 1 1 1 ½. */
  SIXTH_OCTAVE("1/6 octave", 0.5, 1, 1, 1, 0.5),
  /** Weights ½, seven times 1, ½. */
  THIRD_OCTAVE("1/3 octave", 0.5, 1, 1, 1, 1, 1, 1, 1, 0.5);

  private final String label;
  private final double[] weights;

  Smoothing(String label, double... weights) {
    this.label = label;
    this.weights = weights;
  }

  /**
   * @return the word used in limit sets and on screens, such as {@code 1/12 octave}
   */
  public String label() {
    return label;
  }

  /**
   * @return the smoothed curve; an absent point stays absent
   */
  public Curve apply(Curve curve) {
    if (weights.length == 0) {
      return curve;
    }
    double[] smoothed = new double[Grid.POINTS];
    for (int i = 0; i < Grid.POINTS; i++) {
      smoothed[i] = curve.has(i) ? around(curve, i) : Double.NaN;
    }
    return Curve.of(smoothed);
  }

  private double around(Curve curve, int centre) {
    int reach = weights.length / 2;
    double power = 0;
    double weight = 0;
    for (int k = -reach; k <= reach; k++) {
      int i = centre + k;
      if (i >= 0 && i < Grid.POINTS && curve.has(i)) {
        power += weights[k + reach] * Math.pow(10, curve.at(i) / 10);
        weight += weights[k + reach];
      }
    }
    return 10 * Math.log10(power / weight);
  }
}
