package evenpair.inspections;

import evenpair.access.People;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.util.UUID;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.scheduling.annotation.Scheduled;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Ends open inspections without a verdict: by a person or after a time without attempts; the reason
 * is stored and sealed.
 */
@Component
class Abandonment {
  private static final Logger LOG = LoggerFactory.getLogger(Abandonment.class);

  private final TransactionTemplate transactions;
  private final JdbcClient jdbc;
  private final InspectionRows inspections;
  private final InspectionSeals seals;
  private final Announcements announcements;
  private final People people;
  private final InspectionSettings settings;
  private final Clock clock;

  Abandonment(
      TransactionTemplate transactions,
      JdbcClient jdbc,
      InspectionRows inspections,
      InspectionSeals seals,
      Announcements announcements,
      People people,
      InspectionSettings settings,
      Clock clock) {
    this.transactions = transactions;
    this.jdbc = jdbc;
    this.inspections = inspections;
    this.seals = seals;
    this.announcements = announcements;
    this.people = people;
    this.settings = settings;
    this.clock = clock;
  }

  /**
   * @throws Refusal 404 for an unknown inspection, 409 if it is not open any more
   */
  void byPerson(UUID id, String operator, AbandonReason reason) {
    transactions.executeWithoutResult(
        status -> {
          InspectionRow row = lockedRow(id);
          if (row.state() != InspectionState.OPEN) {
            throw new Refusal(
                409, "not-open", "Inspection " + id + " is " + row.state().word() + " and final.");
          }
          row.abandon(reason, clock.instant());
          seals.abandoned(row, people.refer(operator));
          announcements.abandoned(row);
        });
  }

  @Scheduled(
      fixedDelayString = "${evenpair.inspections.abandon-check:5m}",
      initialDelayString = "1m")
  void timeOut() {
    Instant limit = clock.instant().minus(settings.abandonAfter());
    for (InspectionRow row :
        inspections.findByStateAndLastAttemptAtBefore(InspectionState.OPEN, limit)) {
      transactions.executeWithoutResult(status -> timeOut(row.id(), limit));
    }
  }

  private void timeOut(UUID id, Instant limit) {
    InspectionRow row = lockedRow(id);
    if (row.state() == InspectionState.OPEN && row.lastAttemptAt().isBefore(limit)) {
      row.abandon(AbandonReason.TIMED_OUT, clock.instant());
      seals.abandoned(row, null);
      announcements.abandoned(row);
      LOG.warn(
          "Inspection {} of unit {} got no attempt since {} and is abandoned",
          id,
          row.serial(),
          row.lastAttemptAt());
    }
  }

  /**
   * An attempt of the same unit that is being recorded goes first; then the row is read as it left
   * it.
   */
  private InspectionRow lockedRow(UUID id) {
    String serial =
        jdbc.sql("select serial from inspection where id = ?")
            .param(id)
            .query(String.class)
            .optional()
            .orElseThrow(() -> RecordController.unknown(id));
    AdvisoryLocks.hold(jdbc, "unit", serial);
    return inspections.findById(id).orElseThrow();
  }
}
