package evenpair.inspections;

import evenpair.web.jobs.JobKind;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Judges closed inspections again, a few a step, and writes down those that come out otherwise. */
@Component
class RejudgementJob implements JobKind {
  static final String NAME = "rejudgement";

  /** Some fifty milliseconds of signal processing each. */
  private static final int A_STEP = 20;

  private static final String CHOSEN =
      """
      from inspection i join rejudgement r on r.id = :id
      where i.state = 'CLOSED' and i.closed_at <= r.until
        and (r.asked_for ->> 'serial' is null or i.serial = r.asked_for ->> 'serial')
        and (r.asked_for ->> 'batch' is null or i.batch = r.asked_for ->> 'batch')
        and (r.asked_for ->> 'product' is null or i.product = r.asked_for ->> 'product')
        and (r.asked_for ->> 'tuning' is null or i.tuning = r.asked_for ->> 'tuning')
        and (r.asked_for ->> 'since' is null or i.closed_at >= (r.asked_for ->> 'since')::timestamptz)
      """;

  private final JdbcClient jdbc;
  private final InspectionFiles files;
  private final Rejudge rejudge;

  RejudgementJob(JdbcClient jdbc, InspectionFiles files, Rejudge rejudge) {
    this.jdbc = jdbc;
    this.files = files;
    this.rejudge = rejudge;
  }

  @Override
  public String name() {
    return NAME;
  }

  @Override
  public int total(String parameters) {
    int inspections =
        jdbc.sql("select count(*) " + CHOSEN)
            .param("id", id(parameters))
            .query(Integer.class)
            .single();
    return (inspections + A_STEP - 1) / A_STEP;
  }

  @Override
  public void step(String parameters, int index) {
    UUID id = id(parameters);
    List<UUID> chosen =
        jdbc.sql("select i.id " + CHOSEN + " order by i.id offset :from limit :count")
            .param("id", id)
            .param("from", (long) index * A_STEP)
            .param("count", A_STEP)
            .query(UUID.class)
            .list();
    int bitForBit = 0;
    int differing = 0;
    for (UUID inspection : chosen) {
      InspectionFile file = files.find(inspection).orElseThrow();
      Rejudge.Outcome outcome = rejudge.again(file);
      bitForBit += outcome.bitForBit() ? 1 : 0;
      if (outcome.differs()) {
        differing++;
        write(id, file.row(), outcome);
      }
    }
    jdbc.sql("insert into rejudgement_step values (?, ?, ?, ?, ?)")
        .params(id, index, chosen.size(), bitForBit, differing)
        .update();
  }

  private void write(UUID id, InspectionRow row, Rejudge.Outcome outcome) {
    Double largest = outcome.largestDb();
    jdbc.sql("insert into rejudgement_difference values (?, ?, ?, ?, ?, ?, ?, ?)")
        .params(
            id,
            row.id(),
            row.serial(),
            row.softwareVersion(),
            largest == null || largest.isInfinite() ? null : largest,
            outcome.verdictThen(),
            outcome.verdictNow(),
            outcome.problem())
        .update();
  }

  @Override
  public Optional<URI> result(String parameters, UUID job) {
    return Optional.of(URI.create("/api/rejudgements/" + id(parameters)));
  }

  private static UUID id(String parameters) {
    JsonNode json = JsonMapper.shared().readTree(parameters);
    return UUID.fromString(json.path("id").asString());
  }
}
