package evenpair.inspections;

import evenpair.acoustics.Distortion;
import evenpair.acoustics.Response;
import evenpair.captures.CurveFile;
import evenpair.tolerance.Reason;

/** What came out of one channel, before any calibration. */
sealed interface Heard {
  /** A recording with a usable response, dB re FS/FS, and the harmonics beside it. */
  record Clear(Response response, Distortion distortion) implements Heard {}

  /** A recording that cannot be used, and why. */
  record Flawed(Reason reason) implements Heard {}

  /** A response from another rig, dB SPL. */
  record Finished(CurveFile curve) implements Heard {}
}
