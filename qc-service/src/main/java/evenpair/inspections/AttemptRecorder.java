package evenpair.inspections;

import evenpair.access.People;
import evenpair.captures.CaptureStore;
import evenpair.inspections.IdempotencyKeys.Remembered;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Judgement;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import evenpair.web.Software;
import jakarta.persistence.EntityManager;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes an attempt with all that follows from it in one transaction: the attempt, its curves, the inspection's new state, the
 * verdict, the ledger entries, the remembered answer. Capture files are written and synced inside it, before the rows that name
 * them commit, and after every check that could still refuse.
 */
@Component
class AttemptRecorder {
  private final TransactionTemplate transactions;
  private final EntityManager entities;
  private final JdbcClient jdbc;
  private final InspectionRows inspections;
  private final AttemptRows attempts;
  private final InspectionFiles files;
  private final InspectionJsons jsons;
  private final IdempotencyKeys keys;
  private final CaptureStore captures;
  private final People people;
  private final Products products;
  private final InspectionSeals seals;
  private final Announcements announcements;
  private final Ids ids;
  private final InspectionSettings settings;
  private final Software software;
  private final JsonMapper mapper;

  AttemptRecorder(
      TransactionTemplate transactions,
      EntityManager entities,
      JdbcClient jdbc,
      InspectionRows inspections,
      AttemptRows attempts,
      InspectionFiles files,
      InspectionJsons jsons,
      IdempotencyKeys keys,
      CaptureStore captures,
      People people,
      Products products,
      InspectionSeals seals,
      Announcements announcements,
      Ids ids,
      InspectionSettings settings,
      Software software,
      JsonMapper mapper) {
    this.transactions = transactions;
    this.entities = entities;
    this.jdbc = jdbc;
    this.inspections = inspections;
    this.attempts = attempts;
    this.files = files;
    this.jsons = jsons;
    this.keys = keys;
    this.captures = captures;
    this.people = people;
    this.products = products;
    this.seals = seals;
    this.announcements = announcements;
    this.ids = ids;
    this.settings = settings;
    this.software = software;
    this.mapper = mapper;
  }

  Answer record(PreparedAttempt attempt) {
    return transactions.execute(status -> recordLocked(attempt));
  }

  private Answer recordLocked(PreparedAttempt attempt) {
    String station = attempt.submission().station();
    if (attempt.key().isPresent()) {
      keys.lock(station, attempt.key().get());
      Optional<Remembered> first = keys.find(station, attempt.key().get());
      if (first.isPresent()) {
        return replay(first.get(), attempt.requestDigest());
      }
    }
    AdvisoryLocks.hold(jdbc, "unit", attempt.submission().serial());
    Answer answer = recordAlone(attempt);
    attempt
        .key()
        .ifPresent(
            key ->
                keys.remember(
                    station,
                    key,
                    new Remembered(attempt.requestDigest(), answer.inspection(), answer.json()),
                    attempt.receivedAt()));
    return answer;
  }

  /** @throws Refusal 409 if the key came with another request */
  static Answer replay(Remembered first, String requestDigest) {
    if (!first.requestDigest().equals(requestDigest)) {
      throw new Refusal(
              409,
              "idempotency-key-reused",
              "This Idempotency-Key came before with another request of this station; a new request needs a new key.")
          .with("inspection", first.inspection());
    }
    return new Answer(first.inspection(), true, first.answer());
  }

  private Answer recordAlone(PreparedAttempt attempt) {
    Submission submission = attempt.submission();
    Optional<InspectionRow> open = openInspection(submission);
    new TurnCheck(inspections).require(submission, open);
    StoredLimitSet limits = open.map(row -> products.limitSet(row.limitSetId())).orElseGet(() -> active(attempt));
    ChainCheck.requireSameSimulator(attempt.chain(), limits.set());
    Levelling.Levelled levelled =
        Levelling.level(
            attempt.heard(), attempt.chain(), limits.set(), attempt.measuredAt(), settings.driveToleranceDb());
    List<StoredPair> earlier = open.map(row -> files.validSeatings(row.id())).orElse(List.of());
    Course course = Course.of(levelled, earlier, open.map(InspectionRow::tries).orElse(0), limits);

    keepCaptures(attempt.sent());
    UUID operator = people.refer(submission.operator());
    InspectionRow inspection = open.orElseGet(() -> opened(attempt, operator, limits));
    AttemptRow row = stored(attempt, inspection, operator, course, levelled.curves());
    advance(inspection, attempt, course);
    if (open.isEmpty()) {
      entities.persist(inspection);
    }
    entities.flush();
    entities.persist(row);
    levelled.curves().ifPresent(curves -> persistCurves(row.id(), curves));
    seals.attempt(inspection, row, levelled.curves(), ReasonJson.read(row.reasons()));
    course.closing().ifPresent(judgement -> persistVerdict(inspection, judgement));
    entities.flush();
    announcements.attempt(inspection);
    InspectionFile file = files.find(inspection.id()).orElseThrow();
    return new Answer(inspection.id(), false, mapper.writeValueAsString(jsons.whole(file, attempt.locale())));
  }

  private Optional<InspectionRow> openInspection(Submission submission) {
    return inspections.findBySerialAndProductAndTuningAndOccasionAndState(
        submission.serial(), submission.product(), submission.tuning(), submission.occasion(), InspectionState.OPEN);
  }

  /** The set in force when the attempt arrives; the inspection keeps it to its end. */
  private StoredLimitSet active(PreparedAttempt attempt) {
    Submission submission = attempt.submission();
    return products
        .activeAt(submission.product(), submission.tuning(), attempt.receivedAt())
        .orElseThrow(
            () ->
                new Refusal(
                        422,
                        "no-active-limit-set",
                        "There is no active limit set for '%s' in tuning '%s'."
                            .formatted(submission.product(), submission.tuning()))
                    .with("part", "inspection")
                    .with("field", "tuning"));
  }

  private void keepCaptures(SentPair sent) {
    captures.keep(sent.left().file().bytes());
    if (sent.left().file() != sent.right().file()) {
      captures.keep(sent.right().file().bytes());
    }
    sent.idleLeft().ifPresent(file -> captures.keep(file.bytes()));
    sent.idleRight().ifPresent(file -> captures.keep(file.bytes()));
  }

  private InspectionRow opened(PreparedAttempt attempt, UUID operator, StoredLimitSet limits) {
    return new InspectionRow(
        ids.next(), attempt.submission(), operator, limits, attempt.measuredAt(), software.version());
  }

  private AttemptRow stored(
      PreparedAttempt attempt, InspectionRow inspection, UUID operator, Course course, Optional<StoredPair> curves) {
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
        chain(attempt),
        ReasonJson.write(course.flaws()));
  }

  private static AttemptRow.Chain chain(PreparedAttempt attempt) {
    var microphones = attempt.chain().microphones();
    return new AttemptRow.Chain(
        Optional.ofNullable(microphones.get(Channel.LEFT)).map(m -> m.id()).orElse(null),
        Optional.ofNullable(microphones.get(Channel.RIGHT)).map(m -> m.id()).orElse(null),
        attempt.chain().output().map(o -> o.id()).orElse(null),
        attempt.chain().correction().map(c -> c.id()).orElse(null));
  }

  private static void advance(InspectionRow inspection, PreparedAttempt attempt, Course course) {
    inspection.take(course, attempt.receivedAt());
    course.closing().ifPresent(judgement -> inspection.close(judgement.verdict(), attempt.receivedAt()));
  }

  private void persistCurves(UUID attempt, StoredPair curves) {
    for (Channel channel : Channel.values()) {
      entities.persist(new AttemptChannelRow(attempt, channel, curves.of(channel)));
    }
  }

  private void persistVerdict(InspectionRow inspection, Judgement judgement) {
    UUID entry = seals.closed(inspection, judgement);
    entities.persist(new VerdictRow(inspection, judgement, entry, software.version()));
    announcements.closed(inspection);
  }
}
