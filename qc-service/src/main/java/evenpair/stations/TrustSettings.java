package evenpair.stations;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * How a station earns trust beyond its calibrations. All defaults are common practice, no source.
 *
 * @param verificationValid how long a shift verification holds; 1 hour to 31 days, default 12 h: a
 *     shift
 * @param verificationRequired whether a station that has a reference unit for a tuning must have
 *     verified by it before it judges; default false
 * @param referenceValid how long a reference unit's certified curves hold; 1 day to 5 years,
 *     default 365 days
 * @param driveToleranceDb how far the stimulus' own peak may lie from the set's drive; 0.01 to 3
 *     dB, default 0.5
 * @param calibratorUncertaintyDb expanded uncertainty (k = 2) of the sound calibrator's level if a
 *     calibration does not state its certificate's; 0.01 to 3 dB, default 0.3
 * @param gaugeStudyValid how long a gauge study holds; 1 day to 5 years, default 365 days
 * @param poolInteractionAbove a gauge study's interaction is pooled with its repeat spread when its
 *     p is above this; 0 to 1 (1: never), default 0.25
 * @param idleFloorValid how long the station's own idle noise holds; 1 hour to 1 year, default 31
 *     days
 */
@ConfigurationProperties("evenpair.stations")
record TrustSettings(
    @DefaultValue("12h") Duration verificationValid,
    @DefaultValue("false") boolean verificationRequired,
    @DefaultValue("365d") Duration referenceValid,
    @DefaultValue("0.5") double driveToleranceDb,
    @DefaultValue("0.3") double calibratorUncertaintyDb,
    @DefaultValue("365d") Duration gaugeStudyValid,
    @DefaultValue("0.25") double poolInteractionAbove,
    @DefaultValue("31d") Duration idleFloorValid) {

  /**
   * @throws IllegalArgumentException naming the first setting that is out of its range
   */
  TrustSettings {
    Duration day = Duration.ofDays(1);
    StationSettings.within(
        "verification-valid", verificationValid, Duration.ofHours(1), day.multipliedBy(31));
    StationSettings.within("reference-valid", referenceValid, day, day.multipliedBy(5 * 365));
    StationSettings.within("drive-tolerance-db", driveToleranceDb, 0.01, 3);
    StationSettings.within("calibrator-uncertainty-db", calibratorUncertaintyDb, 0.01, 3);
    StationSettings.within("gauge-study-valid", gaugeStudyValid, day, day.multipliedBy(5 * 365));
    StationSettings.within("pool-interaction-above", poolInteractionAbove, 0, 1);
    StationSettings.within(
        "idle-floor-valid", idleFloorValid, Duration.ofHours(1), day.multipliedBy(365));
  }
}
