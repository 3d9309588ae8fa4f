package evenpair.stations;

import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;

/**
 * Why a station may not judge.
 *
 * @param subject the calibration or verification that says so; the reference unit's record if a
 *     verification is missing
 * @param channel which side, if it is one
 * @param region the region of the reference unit's curve that strayed most, for a failed
 *     verification
 * @param since when that was measured; for a verification that no longer holds, since when
 * @param measured change or deviation in dB, if there is one
 * @param limit what it may be, dB
 */
public record Block(
    Cause cause,
    UUID subject,
    Optional<Channel> channel,
    Optional<String> region,
    Instant since,
    OptionalDouble measured,
    OptionalDouble limit) {
  /** What can block a station. */
  public enum Cause {
    /** A microphone's calibration is far from the one before and no second one agrees. */
    MICROPHONE_CHANGED,
    /** The output's calibration is far from the one before and no second one agrees. */
    OUTPUT_CHANGED,
    /** The reference unit did not repeat its certified curve. */
    VERIFICATION_FAILED,
    /** The plant demands a verification and there is none that holds. */
    VERIFICATION_MISSING;

    /**
     * @return as the API says it: {@code microphone-changed}
     */
    public String word() {
      return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
    }
  }
}
