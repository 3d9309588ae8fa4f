package evenpair.certificates;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class RateLimitTests {
  private long now = 1_000_000_000L;
  private final RateLimit limit = new RateLimit(3, Duration.ofSeconds(2), () -> now);

  @Test
  void letsABurstPassThenSaysHowLongToWait() {
    assertThat(limit.ask("a")).isZero();
    assertThat(limit.ask("a")).isZero();
    assertThat(limit.ask("a")).isZero();
    assertThat(limit.ask("a")).isEqualTo(Duration.ofSeconds(2));
  }

  @Test
  void fillsEvenlyAndNotBeyondTheBurst() {
    for (int i = 0; i < 4; i++) {
      limit.ask("a");
    }
    now += Duration.ofSeconds(2).toNanos();
    assertThat(limit.ask("a")).isZero();
    assertThat(limit.ask("a")).isPositive();

    now += Duration.ofHours(1).toNanos();
    for (int i = 0; i < 3; i++) {
      assertThat(limit.ask("a")).isZero();
    }
    assertThat(limit.ask("a")).isPositive();
  }

  @Test
  void asksThatWereRefusedCostNothing() {
    for (int i = 0; i < 100; i++) {
      limit.ask("a");
    }
    now += Duration.ofSeconds(2).toNanos();
    assertThat(limit.ask("a")).isZero();
  }

  @Test
  void countsEachCallerByItself() {
    for (int i = 0; i < 4; i++) {
      limit.ask("a");
    }
    assertThat(limit.ask("b")).isZero();
  }

  @Test
  void takesAnIpV6NetworkForOneCaller() {
    assertThat(CallerAddress.of("2001:db8:1:2:3:4:5:6"))
        .isEqualTo(CallerAddress.of("2001:db8:1:2:ffff::1"))
        .isNotEqualTo(CallerAddress.of("2001:db8:1:3::1"));
    assertThat(CallerAddress.of("192.0.2.7")).isEqualTo("192.0.2.7");
  }
}
