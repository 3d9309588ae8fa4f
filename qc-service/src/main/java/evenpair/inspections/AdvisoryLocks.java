package evenpair.inspections;

import org.springframework.jdbc.core.simple.JdbcClient;

/** Locks by name, valid over all processes on one database, released when the transaction ends. */
final class AdvisoryLocks {
  private AdvisoryLocks() {}

  /** Two names may share a lock (64-bit hash); that only makes one wait for the other. */
  static void hold(JdbcClient jdbc, String kind, String name) {
    jdbc.sql("select pg_advisory_xact_lock(hashtextextended(?, 0))")
        .param(kind + '\n' + name)
        .query((row, number) -> true)
        .single();
  }
}
