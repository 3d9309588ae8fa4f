package evenpair.inspections;

import evenpair.tolerance.Channel;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * Gathers levels that arrive sorted by inspection and channel, and hands over each complete group.
 */
final class Seatings {
  interface Taker {
    void take(UUID inspection, Channel channel, List<float[]> levels);
  }

  private final Taker taker;
  private final List<float[]> levels = new ArrayList<>();
  private UUID inspection;
  private Channel channel;

  Seatings(Taker taker) {
    this.taker = taker;
  }

  void add(UUID nextInspection, Channel nextChannel, float[] level) {
    if (!nextInspection.equals(inspection) || nextChannel != channel) {
      end();
      inspection = nextInspection;
      channel = nextChannel;
    }
    levels.add(level);
  }

  /** To be called after the last one. */
  void end() {
    if (!levels.isEmpty()) {
      taker.take(inspection, channel, List.copyOf(levels));
      levels.clear();
    }
  }
}
