package evenpair.web;

import java.security.SecureRandom;
import java.time.Clock;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Makes UUIDv7 keys (RFC 9562): 48 bits of Unix milliseconds, then random, so that keys made later
 * sort later.
 */
@Component
public class Ids {
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  public Ids(Clock clock) {
    this.clock = clock;
  }

  /**
   * @return a new key
   */
  public UUID next() {
    long random12 = random.nextInt(1 << 12);
    long high = (clock.millis() << 16) | 0x7000L | random12;
    long low = (random.nextLong() & 0x3FFF_FFFF_FFFF_FFFFL) | 0x8000_0000_0000_0000L;
    return new UUID(high, low);
  }
}
