package evenpair.stations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;

/** Tells a gain that has moved from a calibration that went wrong once. Pure. */
final class Drift {
  private Drift() {}

  /**
   * One calibration.
   *
   * @param value pascal or volts per full scale
   * @param changeDb from the one before it, 0 for the first
   * @param changed whether that was beyond the limit when it was recorded
   */
  record Reading(UUID id, double value, double changeDb, boolean changed, Instant at) {}

  /**
   * A changed calibration stops the station until a second one agrees with it, or goes back to the
   * one before (then the changed one was at fault; a changed one that an engineer accepted is
   * none), or an engineer clears it.
   *
   * @param newest up to three, newest first
   * @param cleared ids that an engineer has cleared
   * @return the newest calibration if it stands alone
   */
  static Optional<Reading> unexplained(List<Reading> newest, Set<UUID> cleared, double limitDb) {
    if (newest.isEmpty() || !newest.get(0).changed() || cleared.contains(newest.get(0).id())) {
      return Optional.empty();
    }
    boolean back =
        newest.size() > 2
            && newest.get(1).changed()
            && !cleared.contains(newest.get(1).id())
            && Math.abs(20 * Math.log10(newest.get(0).value() / newest.get(2).value())) <= limitDb;
    return back ? Optional.empty() : Optional.of(newest.get(0));
  }
}
