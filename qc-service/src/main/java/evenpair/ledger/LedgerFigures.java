package evenpair.ledger;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Asks the tables. */
@Component
class LedgerFigures implements LedgerState {
  private final JdbcClient jdbc;

  LedgerFigures(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  @Override
  public long unsealed() {
    return jdbc.sql("select count(*) from ledger_waiting").query(Long.class).single();
  }

  @Override
  public Optional<Instant> oldestUnsealedAt() {
    return instant("select min(e.at) from ledger_waiting w join ledger_entry e on e.id = w.entry");
  }

  @Override
  public Optional<Instant> lastBlockAt() {
    return instant(
        "select max(at) from (select at from ledger_block order by number desc limit 1) b");
  }

  private Optional<Instant> instant(String query) {
    return jdbc.sql(query).query(OffsetDateTime.class).optional().map(OffsetDateTime::toInstant);
  }

  @Override
  public boolean oneRole() {
    return jdbc.sql(
            """
            select pg_has_role(current_user, tableowner, 'member') from pg_tables
            where schemaname = current_schema and tablename = 'ledger_entry'
            """)
        .query(Boolean.class)
        .single();
  }
}
