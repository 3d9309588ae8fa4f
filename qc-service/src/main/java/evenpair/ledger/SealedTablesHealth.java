package evenpair.ledger;

import org.springframework.boot.health.contributor.Health;
import org.springframework.boot.health.contributor.HealthIndicator;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Says what guards the sealed tables: with one database role, the service itself could take the
 * triggers away.
 */
@Component("sealedTables")
class SealedTablesHealth implements HealthIndicator {
  private final JdbcClient jdbc;

  SealedTablesHealth(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  @Override
  public Health health() {
    boolean ruler =
        jdbc.sql(
                """
            select pg_has_role(current_user, tableowner, 'member') from pg_tables
            where schemaname = current_schema and tablename = 'ledger_entry'
            """)
            .query(Boolean.class)
            .single();
    String guard =
        ruler
            ? "one database role: sealed tables guarded by triggers only"
            : "two database roles: sealed tables guarded by privileges and triggers";
    return Health.up().withDetail("guard", guard).build();
  }
}
