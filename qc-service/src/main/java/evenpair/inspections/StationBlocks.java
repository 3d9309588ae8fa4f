package evenpair.inspections;

import evenpair.stations.Block;
import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.util.List;

/** Why a blocked station's captures cannot be judged, as a reason. */
final class StationBlocks {
  private StationBlocks() {}

  /**
   * @return STATION_BLOCKED with the cause's word as its region, and the numbers if the cause has
   *     some
   */
  static Reason reason(Block block) {
    boolean numbers = block.measured().isPresent() && block.limit().isPresent();
    return new Reason(
        ReasonKind.STATION_BLOCKED,
        block.channel().orElse(null),
        block.cause().word(),
        null,
        numbers ? block.measured().getAsDouble() : null,
        numbers ? block.limit().getAsDouble() : null,
        block.region().map(List::of).orElse(List.of()));
  }
}
