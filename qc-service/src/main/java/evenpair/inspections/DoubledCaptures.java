package evenpair.inspections;

import evenpair.tolerance.Reason;
import evenpair.tolerance.ReasonKind;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/**
 * Captures that were sent before, for another tuning of the same unit or another seating of the
 * same inspection. Noise makes two recordings differ, so equal bytes are one recording sent twice:
 * what they are said to show now is not in them.
 */
@Component
class DoubledCaptures {
  private static final String EARLIER =
      """
      select i.tuning from attempt a join inspection i on i.id = a.inspection_id
      where i.serial = ? and a.left_sha256 = ? and a.right_sha256 = ?
        and (i.tuning <> ? or (a.valid and i.state = 'OPEN'))
      order by a.id limit 1
      """;

  private final JdbcClient jdbc;

  DoubledCaptures(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /**
   * @return one reason, naming the tuning that the captures were first sent for if it is another;
   *     empty if they are new
   */
  List<Reason> of(PreparedAttempt attempt) {
    SentPair sent = attempt.sent();
    String stated = attempt.submission().tuning();
    return jdbc
        .sql(EARLIER)
        .params(
            attempt.submission().serial(),
            sent.left().file().sha256(),
            sent.right().file().sha256(),
            stated)
        .query(String.class)
        .optional()
        .map(
            tuning ->
                tuning.equals(stated)
                    ? Reason.of(ReasonKind.DOUBLED_SEATING, null, null, null)
                    : of(tuning))
        .stream()
        .toList();
  }

  private static Reason of(String otherTuning) {
    return new Reason(
        ReasonKind.DOUBLED_TUNING,
        null,
        null,
        null,
        null,
        null,
        List.of(),
        otherTuning,
        null,
        null,
        List.of(),
        false);
  }
}
