package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.tolerance.MeasuredChannel;
import java.util.Optional;

/**
 * One channel of an attempt exactly as stored: 32-bit floats at the 241 grid points, NaN where absent. Everything judged is
 * computed from these.
 *
 * @param levelDb dB SPL at the set's drive, station's correction applied, unsmoothed
 * @param phaseDeg degrees relative to the arrival; null if unknown
 * @param snrDb signal-to-noise ratio of the response, dB; null for a finished curve
 * @param arrivalSeconds when the sweep begins in the capture; null for a finished curve
 * @param peak largest sample, full scale = 1; null for a finished curve
 */
record StoredChannel(float[] levelDb, float[] phaseDeg, float[] snrDb, Double arrivalSeconds, Double peak) {
  Curve level() {
    return Curve.ofFloats(levelDb);
  }

  MeasuredChannel measured() {
    return new MeasuredChannel(level(), Optional.ofNullable(phaseDeg).map(Floats::widen));
  }
}
