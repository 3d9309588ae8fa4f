package evenpair.ledger;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/** Warns when entries wait longer for their block than sealing once a second can explain. */
@Component("ledger")
class LedgerHealth implements HealthIndicator {
  static final Duration LONGEST_WAIT = Duration.ofMinutes(2);

  private final LedgerState ledger;
  private final Clock clock;

  LedgerHealth(LedgerState ledger, Clock clock) {
    this.ledger = ledger;
    this.clock = clock;
  }

  @Override
  public Health health() {
    Optional<Instant> oldest = ledger.oldestUnsealedAt();
    boolean late =
        oldest.filter(at -> at.isBefore(clock.instant().minus(LONGEST_WAIT))).isPresent();
    Health.Builder health = late ? Health.status("WARNING") : Health.up();
    health.withDetail("unsealed", ledger.unsealed());
    ledger.lastBlockAt().ifPresent(at -> health.withDetail("lastBlockAt", at.toString()));
    return health.build();
  }
}
