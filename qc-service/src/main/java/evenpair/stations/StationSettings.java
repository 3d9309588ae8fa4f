package evenpair.stations;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * What a station's calibrations must be like and how long they hold. All defaults are common
 * practice, no source; the calibrator's own certificate gives the tone's tolerances.
 *
 * @param calibrationValid how long a calibration of either end of the chain holds; 1 minute to 31
 *     days, default 12 h
 * @param correctionValid how long a left/right correction holds; 1 hour to 3 years, default 90 days
 * @param changeDb a calibration that differs by more than this from the last one says that the
 *     station has changed; 0.05 to 6 dB, default 0.5
 * @param toneSeconds least length of the tone's steady part; 0.5 to 60 s, default 1
 * @param toneDriftDb largest difference of level between any two quarter seconds of the steady
 *     part; 0.01 to 3 dB, default 0.1
 * @param toneDistortionPercent largest distortion and noise of the tone together; 0.1 to 30 %,
 *     default 3
 * @param toneFrequencyPercent largest difference from the stated frequency; 0.1 to 20 %, default 2
 * @param toneLeastDbfs least level of the tone's peak re full scale; −120 to −6 dB, default −60
 * @param correctionSeatings least number of seatings in each orientation of a swap study; 3 to 10,
 *     default 3
 * @param correctionScatterDb largest scatter (standard deviation between seatings, r.m.s. over 100
 *     Hz to 8 kHz) of a swap study; 0.1 to 10 dB, default 2
 * @param correctionLargestDb largest mean correction over 300 Hz to 3 kHz: beyond it the study is
 *     taken for a mistake; 0.5 to 20 dB, default 6
 * @param clockTolerance how far a given time of measurement may lie in the future; up to 1 day,
 *     default 5 min
 */
@ConfigurationProperties("evenpair.stations")
record StationSettings(
    @DefaultValue("12h") Duration calibrationValid,
    @DefaultValue("90d") Duration correctionValid,
    @DefaultValue("0.5") double changeDb,
    @DefaultValue("1") double toneSeconds,
    @DefaultValue("0.1") double toneDriftDb,
    @DefaultValue("3") double toneDistortionPercent,
    @DefaultValue("2") double toneFrequencyPercent,
    @DefaultValue("-60") double toneLeastDbfs,
    @DefaultValue("3") int correctionSeatings,
    @DefaultValue("2") double correctionScatterDb,
    @DefaultValue("6") double correctionLargestDb,
    @DefaultValue("5m") Duration clockTolerance) {

  /**
   * @throws IllegalArgumentException naming the first setting that is out of its range
   */
  StationSettings {
    within("calibration-valid", calibrationValid, Duration.ofMinutes(1), Duration.ofDays(31));
    within("correction-valid", correctionValid, Duration.ofHours(1), Duration.ofDays(3 * 365));
    within("change-db", changeDb, 0.05, 6);
    within("tone-seconds", toneSeconds, 0.5, 60);
    within("tone-drift-db", toneDriftDb, 0.01, 3);
    within("tone-distortion-percent", toneDistortionPercent, 0.1, 30);
    within("tone-frequency-percent", toneFrequencyPercent, 0.1, 20);
    within("tone-least-dbfs", toneLeastDbfs, -120, -6);
    within("correction-seatings", correctionSeatings, 3, 10);
    within("correction-scatter-db", correctionScatterDb, 0.1, 10);
    within("correction-largest-db", correctionLargestDb, 0.5, 20);
    within("clock-tolerance", clockTolerance, Duration.ZERO, Duration.ofDays(1));
  }

  static void within(String name, double value, double least, double most) {
    if (!(value >= least && value <= most)) { // written so that NaN fails too
      throw new IllegalArgumentException(
          "evenpair.stations." + name + " must be " + least + " to " + most + ", was " + value);
    }
  }

  static void within(String name, Duration value, Duration least, Duration most) {
    if (value.compareTo(least) < 0 || value.compareTo(most) > 0) {
      throw new IllegalArgumentException(
          "evenpair.stations." + name + " must be " + least + " to " + most + ", was " + value);
    }
  }
}
