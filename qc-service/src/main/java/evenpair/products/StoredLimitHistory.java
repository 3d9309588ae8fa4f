package evenpair.products;

import java.sql.Timestamp;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

@Component
@Transactional(readOnly = true)
class StoredLimitHistory implements LimitHistory {
  private final JdbcClient jdbc;

  StoredLimitHistory(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  @Override
  public List<Signed> of(String product, String tuning) {
    return jdbc.sql(
            """
            select l.id, l.version, l.digest, l.author, s.approver, s.reason, s.signed_at
            from limit_set l join limit_set_sign_off s on s.limit_set_id = l.id
            where l.product = ? and l.tuning = ? order by l.version
            """)
        .params(product, tuning)
        .query(
            (row, index) ->
                new Signed(
                    row.getObject("id", UUID.class),
                    row.getInt("version"),
                    row.getString("digest"),
                    row.getObject("author", UUID.class),
                    row.getObject("approver", UUID.class),
                    row.getString("reason"),
                    row.getTimestamp("signed_at").toInstant(),
                    activations(row.getObject("id", UUID.class))))
        .list();
  }

  private List<Instant> activations(UUID limitSet) {
    return jdbc
        .sql(
            "select active_from from limit_set_activation where limit_set_id = ? order by active_from, set_at")
        .param(limitSet)
        .query(Timestamp.class)
        .list()
        .stream()
        .map(Timestamp::toInstant)
        .toList();
  }
}
