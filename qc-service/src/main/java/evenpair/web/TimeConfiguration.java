package evenpair.web;

import java.time.Clock;
import java.time.Duration;
import java.time.temporal.ChronoUnit;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/**
 * Time is passed in: every class that needs the time takes this clock, which tests replace. It
 * ticks in microseconds, which is what the database keeps: an instant reads the same before and
 * after it was stored.
 */
@Configuration
class TimeConfiguration {
  @Bean
  Clock clock() {
    return Clock.tick(Clock.systemUTC(), Duration.of(1, ChronoUnit.MICROS));
  }
}
