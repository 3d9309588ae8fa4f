package evenpair.tolerance;

import evenpair.acoustics.Curve;
import java.util.Optional;

/**
 * What was measured of one channel, as stored: level in dB SPL at the set's drive with the station's correction applied,
 * unsmoothed.
 *
 * @param level 241 levels, dB SPL; points may be absent (a curve from another rig)
 * @param phaseDeg phase in degrees relative to the response's arrival, 241 values, if known
 */
public record MeasuredChannel(Curve level, Optional<double[]> phaseDeg) {}
