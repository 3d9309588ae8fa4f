package evenpair.tolerance;

import evenpair.acoustics.Curve;

/**
 * Standard uncertainties (k = 1) of what is judged, from the station's budget; all in dB, 0 or
 * above.
 *
 * @param levelDb of a single earpiece's deviation d_c, at each grid point; may be absent where the
 *     study has no data
 * @param matchDb of left − right, likewise
 * @param offsetDb of a_c, an earpiece's level
 * @param balanceDb of a_L − a_R
 */
public record Uncertainty(Curve levelDb, Curve matchDb, double offsetDb, double balanceDb) {
  /**
   * @throws IllegalArgumentException if an uncertainty is below 0 or not finite
   */
  public Uncertainty {
    requireUncertainty(offsetDb);
    requireUncertainty(balanceDb);
    for (Curve curve : new Curve[] {levelDb, matchDb}) {
      for (double u : curve.toArray()) {
        requireUncertainty(Double.isNaN(u) ? 0 : u);
      }
    }
  }

  private static void requireUncertainty(double u) {
    if (!(u >= 0) || Double.isInfinite(u)) {
      throw new IllegalArgumentException("an uncertainty must be 0 dB or above, was " + u);
    }
  }
}
