package evenpair.inspections;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/** How much has been recorded of one unit, straight from the tables. */
record Recorded(int inspections, int attempts, int verdicts, int curves) {
  static final Recorded NOTHING = new Recorded(0, 0, 0, 0);

  static Recorded of(JdbcClient jdbc, String serial) {
    return new Recorded(
        count(jdbc, "inspection i", serial),
        count(jdbc, "attempt a join inspection i on i.id = a.inspection_id", serial),
        count(jdbc, "inspection_verdict v join inspection i on i.id = v.inspection_id", serial),
        count(
            jdbc,
            "attempt_channel c join attempt a on a.id = c.attempt_id join inspection i on i.id = a.inspection_id",
            serial));
  }

  /**
   * @return rows of every table of this module, for refusals whose serial never gets as far as a
   *     row
   */
  static List<Integer> everything(JdbcClient jdbc) {
    return List.of(
            "inspection", "attempt", "attempt_channel", "inspection_verdict", "idempotency_key")
        .stream()
        .map(table -> jdbc.sql("select count(*) from " + table).query(Integer.class).single())
        .toList();
  }

  private static int count(JdbcClient jdbc, String from, String serial) {
    return jdbc.sql("select count(*) from " + from + " where i.serial = ?")
        .param(serial)
        .query(Integer.class)
        .single();
  }
}
