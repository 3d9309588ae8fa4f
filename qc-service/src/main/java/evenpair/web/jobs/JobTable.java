package evenpair.web.jobs;

import evenpair.web.jobs.Jobs.Job;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Rows of {@code job}. */
@Component
class JobTable {
  private final JdbcClient jdbc;

  JobTable(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  void add(UUID id, String kind, String parameters, Instant now) {
    jdbc.sql(
            """
            insert into job (id, kind, parameters, state, done, failures, not_before, started_at, changed_at)
            values (?, ?, ?, 'waiting', 0, 0, ?, ?, ?)
            """)
        .params(id, kind, parameters, utc(now), utc(now), utc(now))
        .update();
  }

  Optional<Job> find(UUID id) {
    return jdbc.sql(
            """
            select id, kind, state, done, total, problem, result, started_at, changed_at from job where id = ?
            """)
        .param(id)
        .query(JobTable::job)
        .optional();
  }

  /**
   * Takes one job's lock until the transaction ends; a job that another process is at is passed
   * over. The one that has waited longest comes first, so that jobs take turns.
   */
  Optional<Turn> take(Collection<String> kinds, Instant now) {
    return jdbc.sql(
            """
            select id, kind, parameters, done, total, failures from job
            where state in ('waiting', 'running') and kind = any (?) and not_before <= ?
            order by changed_at, id limit 1 for update skip locked
            """)
        .params(kinds.toArray(String[]::new), utc(now))
        .query(JobTable::turn)
        .optional();
  }

  void setTotal(UUID id, int total, Instant now) {
    jdbc.sql("update job set state = 'running', total = ?, changed_at = ? where id = ?")
        .params(total, utc(now), id)
        .update();
  }

  void setDone(UUID id, int done, Instant now) {
    jdbc.sql("update job set done = ?, failures = 0, changed_at = ? where id = ?")
        .params(done, utc(now), id)
        .update();
  }

  void finish(UUID id, String result, Instant now) {
    jdbc.sql("update job set state = 'done', result = ?, changed_at = ? where id = ?")
        .params(result, utc(now), id)
        .update();
  }

  /** Only if nobody has done the step in the meantime. */
  void tryLater(Turn turn, Instant notBefore, Instant now) {
    jdbc.sql(
            """
            update job set failures = failures + 1, not_before = ?, changed_at = ?
            where id = ? and done = ? and state in ('waiting', 'running')
            """)
        .params(utc(notBefore), utc(now), turn.id(), turn.done())
        .update();
  }

  /** Only if nobody has done the step in the meantime. */
  void fail(Turn turn, String problem, Instant now) {
    jdbc.sql(
            """
            update job set state = 'failed', problem = ?, changed_at = ?
            where id = ? and done = ? and state in ('waiting', 'running')
            """)
        .params(problem, utc(now), turn.id(), turn.done())
        .update();
  }

  private static OffsetDateTime utc(Instant at) {
    return at.atOffset(ZoneOffset.UTC);
  }

  private static Job job(ResultSet row, int index) throws SQLException {
    return new Job(
        row.getObject("id", UUID.class),
        row.getString("kind"),
        row.getString("state"),
        row.getInt("done"),
        row.getObject("total", Integer.class),
        row.getString("problem"),
        row.getString("result"),
        row.getObject("started_at", OffsetDateTime.class).toInstant(),
        row.getObject("changed_at", OffsetDateTime.class).toInstant());
  }

  private static Turn turn(ResultSet row, int index) throws SQLException {
    return new Turn(
        row.getObject("id", UUID.class),
        row.getString("kind"),
        row.getString("parameters"),
        row.getInt("done"),
        row.getObject("total", Integer.class),
        row.getInt("failures"));
  }

  /**
   * @param done the number of the next step
   * @param total null until the first look
   */
  record Turn(UUID id, String kind, String parameters, int done, Integer total, int failures) {}
}
