package evenpair.inspections;

import evenpair.acoustics.Samples;
import evenpair.tolerance.Channel;
import java.util.Optional;

/**
 * Both channels of one seating as decoded, and what was recorded beside them.
 *
 * @param drive the electrical drive, recorded in the same run as both channels
 */
record SentPair(
    SentChannel left,
    SentChannel right,
    Optional<Samples> drive,
    Optional<SentIdle> idleLeft,
    Optional<SentIdle> idleRight) {
  Optional<SentIdle> idle(Channel channel) {
    return channel == Channel.LEFT ? idleLeft : idleRight;
  }
}
