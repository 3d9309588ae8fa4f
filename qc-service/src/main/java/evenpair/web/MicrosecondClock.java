package evenpair.web;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;

/**
 * A clock cut to microseconds, which is what the database keeps: an instant reads the same before
 * and after it was stored. ({@code Clock.tick} with a microsecond divides by zero in {@code
 * millis()} on JDK 17.)
 */
final class MicrosecondClock extends Clock {
  private final Clock clock;

  MicrosecondClock(Clock clock) {
    this.clock = clock;
  }

  @Override
  public ZoneId getZone() {
    return clock.getZone();
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return new MicrosecondClock(clock.withZone(zone));
  }

  @Override
  public Instant instant() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }
}
