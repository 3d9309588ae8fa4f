package evenpair.inspections;

import evenpair.access.People;
import evenpair.captures.CaptureStore;
import evenpair.tolerance.Channel;
import evenpair.web.Ids;
import evenpair.web.Software;
import jakarta.persistence.EntityManager;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Writes an attempt and all that follows from it: capture files, the attempt, its curves, the
 * inspection's new state, the verdict, the ledger entries. To be called in a transaction; files are
 * synced before the rows that name them commit.
 */
@Component
class AttemptWriter {
  private final EntityManager entities;
  private final AttemptRows attempts;
  private final CaptureStore captures;
  private final People people;
  private final InspectionSeals seals;
  private final Announcements announcements;
  private final Ids ids;
  private final Software software;

  AttemptWriter(
      EntityManager entities,
      AttemptRows attempts,
      CaptureStore captures,
      People people,
      InspectionSeals seals,
      Announcements announcements,
      Ids ids,
      Software software) {
    this.entities = entities;
    this.attempts = attempts;
    this.captures = captures;
    this.people = people;
    this.seals = seals;
    this.announcements = announcements;
    this.ids = ids;
    this.software = software;
  }

  /**
   * @return the inspection that the attempt belongs to, as it stands now
   */
  InspectionRow write(
      PreparedAttempt attempt, Optional<InspectionRow> open, Considered considered) {
    keepCaptures(attempt.sent());
    UUID operator = people.refer(attempt.submission().operator());
    InspectionRow inspection = open.orElseGet(() -> opened(attempt, operator, considered));
    AttemptRow row = row(attempt, inspection, operator, considered.course());
    advance(inspection, attempt, considered.course());
    if (open.isEmpty()) {
      entities.persist(inspection);
    }
    entities.flush();
    entities.persist(row);
    considered.curves().ifPresent(curves -> persistCurves(row.id(), curves));
    seals.attempt(inspection, row, considered.curves(), RecordJson.read(row.reasons()));
    considered
        .course()
        .closing()
        .ifPresent(closing -> persistVerdict(inspection, closing, considered.judging()));
    entities.flush();
    announcements.attempt(inspection);
    return inspection;
  }

  private void keepCaptures(SentPair sent) {
    captures.keep(sent.left().file().bytes());
    if (sent.left().file() != sent.right().file()) {
      captures.keep(sent.right().file().bytes());
    }
    sent.idleLeft().ifPresent(idle -> captures.keep(idle.file().bytes()));
    sent.idleRight().ifPresent(idle -> captures.keep(idle.file().bytes()));
  }

  private InspectionRow opened(PreparedAttempt attempt, UUID operator, Considered considered) {
    return new InspectionRow(
        ids.next(),
        attempt.submission(),
        operator,
        considered.limits(),
        attempt.measuredAt(),
        software.version());
  }

  private AttemptRow row(
      PreparedAttempt attempt, InspectionRow inspection, UUID operator, Course course) {
    var circumstances =
        new AttemptRow.Circumstances(
            attempt.submission().station(),
            operator,
            attempt.measuredAt(),
            attempt.receivedAt(),
            attempt.heard().stimulus().map(stimulus -> stimulus.name()).orElse(null),
            software.version());
    return new AttemptRow(
        ids.next(),
        inspection,
        attempts.countByInspectionId(inspection.id()) + 1,
        attempt.submission().seating(),
        course,
        circumstances,
        attempt.sent(),
        AttemptRow.Chain.of(attempt.surroundings().chain()),
        RecordJson.write(course.flaws()));
  }

  private static void advance(InspectionRow inspection, PreparedAttempt attempt, Course course) {
    inspection.take(course, attempt.receivedAt());
    course
        .closing()
        .ifPresent(
            closing -> inspection.close(closing.judgement().verdict(), attempt.receivedAt()));
  }

  private void persistCurves(UUID attempt, StoredPair curves) {
    for (Channel channel : Channel.values()) {
      entities.persist(new AttemptChannelRow(attempt, channel, curves.of(channel)));
    }
  }

  private void persistVerdict(InspectionRow inspection, Course.Closing closing, Judging judging) {
    Basis basis = Basis.of(closing, judging);
    UUID entry = ids.next();
    entities.persist(
        new VerdictRow(inspection, closing.judgement(), basis, entry, software.version()));
    seals.closed(entry, inspection, closing.judgement(), basis);
    announcements.closed(inspection);
  }
}
