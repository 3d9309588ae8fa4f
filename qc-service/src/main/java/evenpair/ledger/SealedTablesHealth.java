package evenpair.ledger;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.stereotype.Component;

/**
 * Says what guards the sealed tables: with one database role, the service itself could take the
 * triggers away.
 */
@Component("sealedTables")
class SealedTablesHealth implements HealthIndicator {
  private final LedgerState ledger;

  SealedTablesHealth(LedgerState ledger) {
    this.ledger = ledger;
  }

  @Override
  public Health health() {
    String guard =
        ledger.oneRole()
            ? "one database role: sealed tables guarded by triggers only"
            : "two database roles: sealed tables guarded by privileges and triggers";
    return Health.up().withDetail("guard", guard).build();
  }
}
