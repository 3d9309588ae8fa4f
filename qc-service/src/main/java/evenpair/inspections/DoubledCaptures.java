package evenpair.inspections;

import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Captures that were sent before for another tuning of the same unit. Noise makes two recordings differ, so equal bytes are one
 * recording sent twice: what the unit does in the stated tuning is not in it.
 */
@Component
class DoubledCaptures {
  private static final String EARLIER =
      """
      select i.tuning from attempt a join inspection i on i.id = a.inspection_id
      where i.serial = ? and i.tuning <> ? and a.left_sha256 = ? and a.right_sha256 = ?
      order by a.id limit 1
      """;

  private final JdbcClient jdbc;

  DoubledCaptures(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /** @return one reason naming the tuning that the captures were first sent for; empty if they are new */
  List<Reason> of(PreparedAttempt attempt) {
    SentPair sent = attempt.sent();
    return jdbc
        .sql(EARLIER)
        .params(
            attempt.submission().serial(),
            attempt.submission().tuning(),
            sent.left().file().sha256(),
            sent.right().file().sha256())
        .query(String.class)
        .optional()
        .map(DoubledCaptures::reason)
        .stream()
        .toList();
  }

  private static Reason reason(String otherTuning) {
    return new Reason(
        ReasonKind.DOUBLED_TUNING, null, null, null, null, null, List.of(), otherTuning, null, null, List.of(), false);
  }
}
