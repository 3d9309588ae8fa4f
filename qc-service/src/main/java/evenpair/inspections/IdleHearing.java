package evenpair.inspections;

import evenpair.acoustics.IdleNoise;
import evenpair.acoustics.Samples;
import evenpair.tolerance.Channel;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;

/** Idle noise from the recordings made while nothing plays, still re full scale. */
final class IdleHearing {
  private IdleHearing() {}

  /**
   * @return by channel; one without a recording, or whose recording cannot give a level, is missing
   */
  static Map<Channel, IdleNoise> of(SentPair pair) {
    Map<Channel, IdleNoise> noises = new EnumMap<>(Channel.class);
    for (Channel channel : Channel.values()) {
      pair.idle(channel)
          .flatMap(idle -> heard(idle.samples()))
          .ifPresent(noise -> noises.put(channel, noise));
    }
    return noises;
  }

  /** Digital silence has no level: no microphone gives it. */
  private static Optional<IdleNoise> heard(Samples samples) {
    try {
      return Optional.of(IdleNoise.of(samples)).filter(noise -> noise.weightedRms() > 0);
    } catch (IllegalArgumentException tooShort) {
      return Optional.empty();
    }
  }
}
