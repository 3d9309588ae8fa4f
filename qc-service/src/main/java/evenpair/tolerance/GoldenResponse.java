package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Arrays;
import java.util.Optional;

/**
 * The curve that the product should have, unsmoothed, at the 241 grid points.
 *
 * @param level dB SPL (re 20 µPa) at the limit set's drive, every point present
 * @param phaseDeg phase in degrees relative to the response's arrival, 241 values, if known (for
 *     polarity)
 */
public record GoldenResponse(Curve level, Optional<double[]> phaseDeg) {
  /**
   * @throws IllegalArgumentException if a point is absent or the phase has not 241 finite values
   */
  public GoldenResponse {
    for (int i = 0; i < Grid.POINTS; i++) {
      if (!level.has(i)) {
        throw new IllegalArgumentException(
            "golden response has no level at " + Grid.label(i) + " Hz");
      }
    }
    phaseDeg = phaseDeg.map(double[]::clone);
    phaseDeg.ifPresent(GoldenResponse::requireWhole);
  }

  private static void requireWhole(double[] phaseDeg) {
    if (phaseDeg.length != Grid.POINTS || !Arrays.stream(phaseDeg).allMatch(Double::isFinite)) {
      throw new IllegalArgumentException(
          "golden phase needs " + Grid.POINTS + " finite values, was given " + phaseDeg.length);
    }
  }
}
