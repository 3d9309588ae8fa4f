package evenpair.inspections.plant;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** What benches say of the captures that they could not send yet; the newest report of each. */
@Component
class HeldReports {
  private final JdbcClient jdbc;
  private final StationNews news;

  HeldReports(JdbcClient jdbc, StationNews news) {
    this.jdbc = jdbc;
    this.news = news;
  }

  /**
   * @param held seatings whose captures the bench holds
   * @param oldestAt when the oldest of them was measured; null if none is held or it is not known
   */
  record Report(String station, int held, Instant oldestAt, Instant reportedAt) {}

  @Transactional
  void put(Report report) {
    jdbc.sql(
            """
            insert into station_report (station, held, oldest_held_at, reported_at) values (?, ?, ?, ?)
            on conflict (station) do update
            set held = excluded.held, oldest_held_at = excluded.oldest_held_at, reported_at = excluded.reported_at
            """)
        .params(
            report.station(),
            report.held(),
            report.oldestAt() == null ? null : report.oldestAt().atOffset(ZoneOffset.UTC),
            report.reportedAt().truncatedTo(ChronoUnit.MICROS).atOffset(ZoneOffset.UTC))
        .update();
    news.station(report.station());
  }

  List<Report> all() {
    return jdbc.sql(
            "select station, held, oldest_held_at, reported_at from station_report order by station")
        .query(HeldReports::report)
        .list();
  }

  private static Report report(ResultSet row, int number) throws SQLException {
    return new Report(
        row.getString(1),
        row.getInt(2),
        instant(row, 3).orElse(null),
        instant(row, 4).orElseThrow());
  }

  static Optional<Instant> instant(ResultSet row, int column) throws SQLException {
    return Optional.ofNullable(row.getObject(column, OffsetDateTime.class))
        .map(OffsetDateTime::toInstant);
  }
}
