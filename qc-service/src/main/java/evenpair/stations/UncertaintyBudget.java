package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.tolerance.Uncertainty;
import java.time.Instant;
import java.util.UUID;

/**
 * Standard uncertainties of what a station measures on one tuning, by their sources, all in dB.
 *
 * <p>u² = u_repeat²/n + u_reproducibility² + u_calibrator² (level only) + u_correction² (match and
 * balance only), n seatings. The calibrator's error is one gain for all frequencies: alignment
 * takes it out of a deviation, so that it stands in the level's offset alone. GUM 5.1, independent
 * sources (from memory).
 *
 * @param study the gauge study
 * @param studiedAt when its last capture was measured
 * @param validUntil until when it holds
 * @param deviation of one earpiece's aligned deviation from golden; at each point the larger one of
 *     both channels
 * @param match of left − right
 * @param offset of one earpiece's level a_c; the larger one of both channels
 * @param balance of a_L − a_R
 */
public record UncertaintyBudget(
    UUID study,
    Instant studiedAt,
    Instant validUntil,
    ByFrequency deviation,
    ByFrequency match,
    Scalar offset,
    Scalar balance) {

  /**
   * @param n how many valid seatings are combined, 1 upwards
   * @return the combined standard uncertainties
   */
  public Uncertainty forSeatings(int n) {
    return new Uncertainty(
        deviation.combined(n), match.combined(n), offset.combined(n), balance.combined(n));
  }

  /** Sources at the 241 grid points; absent where the study has no data. */
  public record ByFrequency(Curve repeat, Curve reproducibility, Curve correction) {
    /**
     * @return √(repeat²/n + reproducibility² + correction²), absent where one of them is
     */
    public Curve combined(int n) {
      requireSeatings(n);
      double[] r = repeat.toArray();
      double[] b = reproducibility.toArray();
      double[] c = correction.toArray();
      double[] combined = new double[r.length];
      for (int i = 0; i < combined.length; i++) {
        combined[i] = Math.sqrt(r[i] * r[i] / n + b[i] * b[i] + c[i] * c[i]);
      }
      return Curve.of(combined);
    }
  }

  /** Sources of one number; 0 for a source that has no part in it. */
  public record Scalar(
      double repeat, double reproducibility, double calibrator, double correction) {
    /**
     * @return √(repeat²/n + reproducibility² + calibrator² + correction²)
     */
    public double combined(int n) {
      requireSeatings(n);
      return Math.sqrt(
          repeat * repeat / n
              + reproducibility * reproducibility
              + calibrator * calibrator
              + correction * correction);
    }
  }

  private static void requireSeatings(int n) {
    if (n < 1) {
      throw new IllegalArgumentException("at least one seating, was " + n);
    }
  }
}
