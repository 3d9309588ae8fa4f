package evenpair.inspections.plant;

import evenpair.inspections.plant.StationHealth.FirstPass;
import evenpair.inspections.plant.StationHealth.LastVerdict;
import evenpair.inspections.plant.StationHealth.Mountings;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Counts from the record, of every station at once: one query each, whatever their number. */
@Component
class StationFigures {
  private static final String VERDICTS =
      """
      select s.name, i.id, i.serial, i.tuning, i.verdict, i.closed_at
      from station s cross join lateral (
        select id, serial, tuning, verdict, closed_at from inspection
        where station = s.name and state = 'CLOSED' order by closed_at desc, id desc limit ?) i
      order by s.name, i.closed_at desc, i.id desc
      """;

  private static final String FIRST_PASS =
      """
      select station, count(*), count(*) filter (where passed) from (
        select station, serial, bool_and(verdict = 'PASS') as passed from inspection
        where state = 'CLOSED' and occasion = 'PRODUCTION' and closed_at > ?
        group by station, product, serial) unit
      group by station
      """;

  private static final String MOUNTINGS =
      """
      select station, operator_ref, count(*), count(*) filter (where outcome = 'RESEAT') from attempt
      where received_at > ? and station = any (select name from station)
      group by station, operator_ref order by station, count(*) desc, operator_ref
      """;

  private static final String HEARD =
      """
      select s.name, (select max(received_at) from attempt where station = s.name) from station s
      """;

  private final JdbcClient jdbc;

  StationFigures(JdbcClient jdbc) {
    this.jdbc = jdbc;
  }

  Map<String, List<LastVerdict>> verdicts(int most) {
    Map<String, List<LastVerdict>> all = new HashMap<>();
    jdbc.sql(VERDICTS)
        .param(most)
        .query(
            row -> {
              add(all, row.getString(1), verdict(row));
            });
    return all;
  }

  private static LastVerdict verdict(ResultSet row) throws SQLException {
    return new LastVerdict(
        row.getObject(2, UUID.class),
        row.getString(3),
        row.getString(4),
        row.getString(5),
        HeldReports.instant(row, 6).orElseThrow());
  }

  /**
   * @param since exclusive
   */
  Map<String, FirstPass> firstPass(Instant since) {
    Map<String, FirstPass> all = new HashMap<>();
    jdbc.sql(FIRST_PASS)
        .param(since.atOffset(ZoneOffset.UTC))
        .query(
            row -> {
              all.put(row.getString(1), new FirstPass(row.getInt(2), row.getInt(3)));
            });
    return all;
  }

  /**
   * @param since exclusive
   */
  Map<String, List<Mountings>> mountings(Instant since) {
    Map<String, List<Mountings>> all = new HashMap<>();
    jdbc.sql(MOUNTINGS)
        .param(since.atOffset(ZoneOffset.UTC))
        .query(
            row -> {
              add(
                  all,
                  row.getString(1),
                  new Mountings(row.getObject(2, UUID.class), row.getInt(3), row.getInt(4)));
            });
    return all;
  }

  /**
   * @return when the newest attempt of each station arrived; none for one that never sent any
   */
  Map<String, Instant> lastAttempts() {
    Map<String, Instant> all = new HashMap<>();
    jdbc.sql(HEARD)
        .query(
            row -> {
              String station = row.getString(1);
              HeldReports.instant(row, 2).ifPresent(at -> all.put(station, at));
            });
    return all;
  }

  private static <T> void add(Map<String, List<T>> all, String station, T value) {
    all.computeIfAbsent(station, name -> new ArrayList<>()).add(value);
  }
}
