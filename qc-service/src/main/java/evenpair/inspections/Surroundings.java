package evenpair.inspections;

import evenpair.stations.Block;
import evenpair.stations.Stations.Chain;
import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.Map;
import java.util.Optional;

/**
 * What a station was worth when an attempt was measured there.
 *
 * @param chain its calibrations and correction
 * @param block why it may not judge, if it may not
 * @param idleFloorDba its own A-weighted noise by channel, dB(A); a channel never measured is
 *     missing
 */
record Surroundings(
    Chain chain, Instant measuredAt, Optional<Block> block, Map<Channel, Double> idleFloorDba) {
  Surroundings {
    idleFloorDba = Map.copyOf(idleFloorDba);
  }
}
