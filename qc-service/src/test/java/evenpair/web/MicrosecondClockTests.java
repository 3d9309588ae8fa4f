package evenpair.web;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import org.junit.jupiter.api.Test;

class MicrosecondClockTests {
  private static final Instant EXACT = Instant.parse("2026-11-25T09:39:35.516623117Z");
  private final Clock clock = new MicrosecondClock(Clock.fixed(EXACT, ZoneOffset.UTC));

  @Test
  void cutsWhatTheDatabaseWouldCut() {
    assertThat(clock.instant()).isEqualTo(Instant.parse("2026-11-25T09:39:35.516623Z"));
  }

  @Test
  void alsoTellsMilliseconds() {
    assertThat(clock.millis()).isEqualTo(EXACT.toEpochMilli());
  }
}
