package evenpair.inspections;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings of ingest; a value out of range stops the start.
 *
 * @param abandonAfter an open inspection without an attempt for this long is abandoned; above 0,
 *     default 24 h
 * @param driveToleranceDb how far the stimulus' own peak may lie from what gives the set's drive,
 *     dB; 0 to 3, default 0.5
 * @param keepKeys how long an Idempotency-Key is remembered; above 0, default 90 days
 * @param curveMaxBytes most bytes of a curve file; default 8 MiB (some 400,000 rows)
 * @param clockAheadAllowed how far a rig's clock may run ahead of ours; default 5 min
 * @param liveClients most listeners of live events at once; 1 to 10,000, default 64
 */
@ConfigurationProperties("evenpair.inspections")
record InspectionSettings(
    @DefaultValue("24h") Duration abandonAfter,
    @DefaultValue("0.5") double driveToleranceDb,
    @DefaultValue("90d") Duration keepKeys,
    @DefaultValue("8388608") long curveMaxBytes,
    @DefaultValue("5m") Duration clockAheadAllowed,
    @DefaultValue("64") int liveClients) {
  InspectionSettings {
    require(abandonAfter.toMillis() > 0, "abandon-after must be above 0", abandonAfter);
    require(
        driveToleranceDb >= 0 && driveToleranceDb <= 3,
        "drive-tolerance-db must be 0 to 3 dB",
        driveToleranceDb);
    require(keepKeys.toMillis() > 0, "keep-keys must be above 0", keepKeys);
    require(curveMaxBytes > 0, "curve-max-bytes must be above 0", curveMaxBytes);
    require(
        !clockAheadAllowed.isNegative(),
        "clock-ahead-allowed must not be negative",
        clockAheadAllowed);
    require(
        liveClients >= 1 && liveClients <= 10_000, "live-clients must be 1 to 10000", liveClients);
  }

  private static void require(boolean holds, String rule, Object value) {
    if (!holds) {
      throw new IllegalArgumentException("evenpair.inspections." + rule + ", was " + value);
    }
  }
}
