package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.tolerance.MeasuredChannel;
import java.util.List;
import java.util.Optional;

/**
 * One channel of an attempt exactly as stored: 32-bit floats at the 241 grid points, NaN where
 * absent. Everything judged is computed from these.
 *
 * @param levelDb dB SPL at the set's drive, station's correction applied, unsmoothed
 * @param phaseDeg degrees relative to the arrival; null if unknown
 * @param snrDb signal-to-noise ratio of the response, dB; null for a finished curve
 * @param arrivalSeconds when the sweep begins in the capture; null for a finished curve
 * @param peak largest sample, full scale = 1; null for a finished curve
 * @param distortion null for a finished curve
 * @param idle null without a usable idle recording
 */
record StoredChannel(
    float[] levelDb,
    float[] phaseDeg,
    float[] snrDb,
    Double arrivalSeconds,
    Double peak,
    StoredDistortion distortion,
    StoredIdle idle) {
  /** A channel of which neither distortion nor idle noise was measured. */
  StoredChannel(
      float[] levelDb, float[] phaseDeg, float[] snrDb, Double arrivalSeconds, Double peak) {
    this(levelDb, phaseDeg, snrDb, arrivalSeconds, peak, null, null);
  }

  Curve level() {
    return Curve.ofFloats(levelDb);
  }

  MeasuredChannel measured() {
    return new MeasuredChannel(
        level(),
        Optional.ofNullable(phaseDeg).map(Floats::widen),
        Optional.ofNullable(distortion).map(d -> StoredDistortion.mean(List.of(d))),
        Optional.ofNullable(idle).map(i -> StoredIdle.mean(List.of(i))));
  }
}
