package evenpair.inspections;

import evenpair.web.Ids;
import evenpair.web.Software;
import evenpair.web.jobs.Jobs;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * Starts and reports runs of judging again: on demand, and every night over the inspections closed
 * since the night before.
 */
@Component
class Rejudgements {
  private static final JsonMapper JSON = JsonMapper.builder().build();
  private static final Duration A_DAY = Duration.ofHours(25); // an hour of overlap, for slow nights

  private final JdbcClient jdbc;
  private final Jobs jobs;
  private final Ids ids;
  private final Clock clock;
  private final Software software;
  private final TransactionTemplate transaction;

  Rejudgements(
      JdbcClient jdbc,
      Jobs jobs,
      Ids ids,
      Clock clock,
      Software software,
      TransactionTemplate transaction) {
    this.jdbc = jdbc;
    this.jobs = jobs;
    this.ids = ids;
    this.clock = clock;
    this.software = software;
    this.transaction = transaction;
  }

  /**
   * Which inspections; null means any.
   *
   * @param since closed at or after that instant
   */
  record Which(String serial, String batch, String product, String tuning, Instant since) {}

  /** A run and the job that does it. */
  record Started(UUID rejudgement, UUID job) {}

  /**
   * @param verdictThen and
   * @param verdictNow the latter null if it could not be judged
   */
  record Difference(
      UUID inspection,
      String serial,
      String softwareVersion,
      Double largestDb,
      String verdictThen,
      String verdictNow,
      String problem) {}

  /**
   * @param inspections judged again so far
   * @param bitForBit of them, every number the same to the bit
   * @param differing of them, to be looked at
   */
  record Report(
      UUID id,
      String softwareVersion,
      Instant startedAt,
      Instant until,
      boolean nightly,
      int inspections,
      int bitForBit,
      int differing,
      List<Difference> differences) {}

  Started start(Which which) {
    return transaction.execute(status -> begin(which, null)).orElseThrow();
  }

  @Scheduled(cron = "${evenpair.rejudging.nightly:0 30 3 * * *}")
  void tonight() {
    Instant now = clock.instant();
    transaction.executeWithoutResult(
        status ->
            begin(
                new Which(null, null, null, null, now.minus(A_DAY).truncatedTo(ChronoUnit.MICROS)),
                now.atOffset(ZoneOffset.UTC).toLocalDate()));
  }

  /**
   * @return empty if another process has begun this night's run
   */
  private Optional<Started> begin(Which which, LocalDate night) {
    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    UUID id = ids.next();
    int added =
        jdbc.sql(
                "insert into rejudgement (id, asked_for, until, software_version, started_at, night)"
                    + " values (?, ?::jsonb, ?, ?, ?, ?) on conflict (night) do nothing")
            .params(
                id,
                JSON.writeValueAsString(which),
                now.atOffset(ZoneOffset.UTC),
                software.version(),
                now.atOffset(ZoneOffset.UTC),
                night)
            .update();
    return added == 0
        ? Optional.empty()
        : Optional.of(new Started(id, jobs.start(RejudgementJob.NAME, "{\"id\":\"" + id + "\"}")));
  }

  /**
   * @return newest first
   */
  List<Report> newest(int most) {
    return jdbc
        .sql("select id from rejudgement order by started_at desc, id desc limit ?")
        .param(most)
        .query(UUID.class)
        .list()
        .stream()
        .flatMap(id -> find(id).stream())
        .toList();
  }

  Optional<Report> find(UUID id) {
    return jdbc.sql(
            """
            select r.id, r.software_version, r.started_at, r.until, r.night is not null as nightly,
              coalesce(sum(s.inspections), 0)::int as inspections,
              coalesce(sum(s.bit_for_bit), 0)::int as bit_for_bit,
              coalesce(sum(s.differing), 0)::int as differing
            from rejudgement r left join rejudgement_step s on s.rejudgement_id = r.id
            where r.id = ? group by r.id
            """)
        .param(id)
        .query(
            (row, index) ->
                new Report(
                    id,
                    row.getString("software_version"),
                    row.getTimestamp("started_at").toInstant(),
                    row.getTimestamp("until").toInstant(),
                    row.getBoolean("nightly"),
                    row.getInt("inspections"),
                    row.getInt("bit_for_bit"),
                    row.getInt("differing"),
                    differences(id)))
        .optional();
  }

  private List<Difference> differences(UUID id) {
    return jdbc.sql(
            """
            select inspection_id, serial, software_version, largest_db, verdict_then, verdict_now, problem
            from rejudgement_difference where rejudgement_id = ? order by serial, inspection_id limit 500
            """)
        .param(id)
        .query(
            (row, index) ->
                new Difference(
                    row.getObject("inspection_id", UUID.class),
                    row.getString("serial"),
                    row.getString("software_version"),
                    row.getObject("largest_db", Double.class),
                    row.getString("verdict_then"),
                    row.getString("verdict_now"),
                    row.getString("problem")))
        .list();
  }
}
