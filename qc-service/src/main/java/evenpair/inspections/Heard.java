package evenpair.inspections;

import evenpair.acoustics.Response;
import evenpair.captures.CurveFile;
import evenpair.tolerance.Reason;

/** What came out of one channel, before any calibration. */
sealed interface Heard {
  /** A recording with a usable response, dB re FS/FS. */
  record Clear(Response response) implements Heard {}

  /** A recording that cannot be used, and why. */
  record Flawed(Reason reason) implements Heard {}

  /** A response from another rig, dB SPL. */
  record Finished(CurveFile curve) implements Heard {}
}
