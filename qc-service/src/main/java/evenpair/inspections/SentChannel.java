package evenpair.inspections;

import evenpair.acoustics.Samples;
import evenpair.captures.CurveFile;
import evenpair.tolerance.Channel;

/**
 * One channel of a pair as sent and decoded.
 *
 * @param file the bytes exactly as sent; the same for both channels of one file
 */
record SentChannel(Channel channel, SentFile file, Format format, Sound sound) {
  /** What the file is, so that its bytes can be read again the same way. */
  enum Format {
    WAV,
    WAV_LEFT_OF_TWO,
    WAV_RIGHT_OF_TWO,
    WAV_LEFT_WITH_DRIVE,
    WAV_RIGHT_WITH_DRIVE,
    CURVE
  }

  /** A recording, or a response that another rig has computed. */
  sealed interface Sound {}

  record Recording(Samples samples) implements Sound {}

  record Finished(CurveFile curve) implements Sound {}
}
