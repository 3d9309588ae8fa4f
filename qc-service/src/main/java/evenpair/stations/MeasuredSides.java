package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.tolerance.Channel;
import jakarta.persistence.Embeddable;

/**
 * Both sides of a pair as measured: levels in dB SPL at the 241 grid points, unsmoothed, NaN where
 * absent, and the digests of what was sent.
 */
@Embeddable
record MeasuredSides(float[] leftDb, float[] rightDb, String leftSha256, String rightSha256) {
  Curve level(Channel channel) {
    return Curve.ofFloats(channel == Channel.LEFT ? leftDb : rightDb);
  }

  String sha256(Channel channel) {
    return channel == Channel.LEFT ? leftSha256 : rightSha256;
  }
}
