package evenpair.tolerance;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Optional;

/**
 * What was measured of one channel, as stored: level in dB SPL at the set's drive with the
 * station's correction applied, unsmoothed.
 *
 * @param level 241 levels, dB SPL; points may be absent (a curve from another rig)
 * @param phaseDeg phase in degrees relative to the response's arrival, 241 values, NaN where
 *     absent, if known
 * @param distortion if it was measured (a curve from another rig has none)
 * @param idleNoise if it was measured
 */
public record MeasuredChannel(
    Curve level,
    Optional<double[]> phaseDeg,
    Optional<MeasuredDistortion> distortion,
    Optional<MeasuredIdleNoise> idleNoise) {
  /**
   * @throws IllegalArgumentException if there is a phase with another number of values than the
   *     grid's
   */
  public MeasuredChannel {
    if (phaseDeg.isPresent() && phaseDeg.get().length != Grid.POINTS) {
      throw new IllegalArgumentException(
          "a phase needs " + Grid.POINTS + " values, was given " + phaseDeg.get().length);
    }
  }

  /** A channel of which neither distortion nor idle noise was measured. */
  public MeasuredChannel(Curve level, Optional<double[]> phaseDeg) {
    this(level, phaseDeg, Optional.empty(), Optional.empty());
  }
}
