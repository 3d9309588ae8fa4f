package evenpair.captures;

import evenpair.acoustics.Curve;
import java.util.Optional;

/**
 * A response curve read from a text file and brought to the grid.
 *
 * @param level dB as written; absent where the file does not reach
 * @param phaseDeg 241 phases in −180 … 180 degrees, NaN where absent; empty if the file has no
 *     phase column
 * @param points how many frequencies the file held
 * @param fromHz its lowest frequency
 * @param toHz its highest frequency
 */
public record CurveFile(
    Curve level, Optional<double[]> phaseDeg, int points, double fromHz, double toHz) {}
