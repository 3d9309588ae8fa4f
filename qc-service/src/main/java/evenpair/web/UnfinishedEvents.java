package evenpair.web;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What one module has told another and that one has not finished with. */
@Component
public class UnfinishedEvents {
  private final JdbcClient jdbc;

  UnfinishedEvents(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  /**
   * @return how many listeners still owe their work
   */
  public long count() {
    return jdbc.sql("select count(*) from event_publication where completion_date is null")
        .query(Long.class)
        .single();
  }

  /**
   * @return when the oldest of them was published; empty if none is unfinished
   */
  public Optional<Instant> oldestAt() {
    return jdbc.sql(
            "select min(publication_date) from event_publication where completion_date is null")
        .query(OffsetDateTime.class)
        .optional()
        .map(OffsetDateTime::toInstant);
  }
}
