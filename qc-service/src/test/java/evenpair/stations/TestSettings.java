package evenpair.stations;

import java.time.Duration;

/** The settings as they are by default. */
final class TestSettings {
  static final StationSettings DEFAULTS =
      new StationSettings(
          Duration.ofHours(12),
          Duration.ofDays(90),
          0.5,
          1,
          0.1,
          3,
          2,
          -60,
          3,
          2,
          6,
          Duration.ofMinutes(5));

  private TestSettings() {}
}
