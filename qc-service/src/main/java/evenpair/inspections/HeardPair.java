package evenpair.inspections;

import evenpair.acoustics.IdleNoise;
import evenpair.captures.Stimuli.Stimulus;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Reason;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Both channels after the signal processing; nothing in it depends on station or limit set.
 *
 * @param stimulus empty if both channels are finished curves
 * @param together what is wrong with the two of them as a pair
 * @param idle idle noise by channel, re full scale; a channel without a usable idle recording is
 *     missing
 */
record HeardPair(
    Heard left,
    Heard right,
    Optional<Stimulus> stimulus,
    List<Reason> together,
    Map<Channel, IdleNoise> idle) {
  HeardPair {
    together = List.copyOf(together);
    idle = Map.copyOf(idle);
  }

  /** A pair without idle recordings. */
  HeardPair(Heard left, Heard right, Optional<Stimulus> stimulus, List<Reason> together) {
    this(left, right, stimulus, together, Map.of());
  }

  Heard of(Channel channel) {
    return channel == Channel.LEFT ? left : right;
  }

  /**
   * @return every flaw found, left first, then those of the pair
   */
  List<Reason> flaws() {
    Stream<Reason> alone =
        Stream.of(left, right)
            .filter(Heard.Flawed.class::isInstance)
            .map(Heard.Flawed.class::cast)
            .map(Heard.Flawed::reason);
    return Stream.concat(alone, together.stream()).toList();
  }
}
