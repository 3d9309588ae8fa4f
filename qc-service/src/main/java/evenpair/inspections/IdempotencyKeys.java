package evenpair.inspections;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** First answers by station and key. */
@Component
class IdempotencyKeys {
  private final JdbcClient jdbc;

  IdempotencyKeys(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /**
   * @param requestDigest see {@link RequestDigest} @param answer the first answer's JSON
   */
  record Remembered(String requestDigest, UUID inspection, String answer) {}

  Optional<Remembered> find(String station, String key) {
    return jdbc.sql(
            "select request_digest, inspection_id, answer from idempotency_key where station = ? and key = ?")
        .params(station, key)
        .query(
            (row, number) ->
                new Remembered(row.getString(1), row.getObject(2, UUID.class), row.getString(3)))
        .optional();
  }

  /**
   * Waits until no other transaction, in this process or another, holds the key; held until the
   * transaction ends.
   */
  void lock(String station, String key) {
    AdvisoryLocks.hold(jdbc, "idempotency-key", station + '\n' + key);
  }

  /** To be called in the transaction of the record that it answers for. */
  void remember(String station, String key, Remembered remembered, Instant at) {
    jdbc.sql(
            "insert into idempotency_key (station, key, request_digest, inspection_id, answer, created_at)"
                + " values (?, ?, ?, ?, ?, ?)")
        .params(
            station,
            key,
            remembered.requestDigest(),
            remembered.inspection(),
            remembered.answer(),
            at.atOffset(ZoneOffset.UTC))
        .update();
  }

  /**
   * @return how many were forgotten
   */
  int forgetBefore(Instant limit) {
    return jdbc.sql("delete from idempotency_key where created_at < ?")
        .param(limit.atOffset(ZoneOffset.UTC))
        .update();
  }
}
