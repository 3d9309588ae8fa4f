package evenpair.access;

import java.time.Duration;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * Settings of signing in; a value out of range stops the start.
 *
 * @param idle a session without a request for this long ends; 1 min to 12 h, default 1 h
 * @param longest a session ends after this long, whatever is done in it; 5 min to 7 days, default
 *     12 h
 * @param knownAtBench how long a bench may take a badge for known without asking the service; 1 min
 *     to 24 h, default 12 h
 */
@ConfigurationProperties("evenpair.access")
record AccessSettings(
    @DefaultValue("1h") Duration idle,
    @DefaultValue("12h") Duration longest,
    @DefaultValue("12h") Duration knownAtBench) {
  AccessSettings {
    require("idle", idle, Duration.ofMinutes(1), Duration.ofHours(12));
    require("longest", longest, Duration.ofMinutes(5), Duration.ofDays(7));
    require("known-at-bench", knownAtBench, Duration.ofMinutes(1), Duration.ofHours(24));
  }

  private static void require(String name, Duration value, Duration least, Duration most) {
    if (value.compareTo(least) < 0 || value.compareTo(most) > 0) {
      throw new IllegalArgumentException(
          "evenpair.access." + name + " must be " + least + " to " + most + ", was " + value);
    }
  }
}
