package evenpair.web;

import java.time.Clock;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Configuration;

/** Time is passed in: every class that needs the time takes this clock, which tests replace. */
@Configuration
class TimeConfiguration {
  @Bean
  Clock clock() {
    return new MicrosecondClock(Clock.systemUTC());
  }
}
