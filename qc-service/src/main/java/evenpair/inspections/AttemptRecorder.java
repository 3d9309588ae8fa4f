package evenpair.inspections;

import evenpair.inspections.IdempotencyKeys.Remembered;
import evenpair.web.Refusal;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;
import tools.jackson.databind.json.JsonMapper;

/**
 * Records an attempt with all that follows from it in one transaction, one attempt of a unit at a
 * time, each request once. What could still refuse comes before the first file or row.
 */
@Component
class AttemptRecorder {
  private final TransactionTemplate transactions;
  private final JdbcClient jdbc;
  private final InspectionRows inspections;
  private final InspectionFiles files;
  private final InspectionJsons jsons;
  private final IdempotencyKeys keys;
  private final AttemptJudge judge;
  private final AttemptWriter writer;
  private final JsonMapper mapper;

  AttemptRecorder(
      TransactionTemplate transactions,
      JdbcClient jdbc,
      InspectionRows inspections,
      InspectionFiles files,
      InspectionJsons jsons,
      IdempotencyKeys keys,
      AttemptJudge judge,
      AttemptWriter writer,
      JsonMapper mapper) {
    this.transactions = transactions;
    this.jdbc = jdbc;
    this.inspections = inspections;
    this.files = files;
    this.jsons = jsons;
    this.keys = keys;
    this.judge = judge;
    this.writer = writer;
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

  /**
   * @throws Refusal 409 if the key came with another request
   */
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
    Optional<InspectionRow> open =
        inspections.findBySerialAndProductAndTuningAndOccasionAndState(
            submission.serial(),
            submission.product(),
            submission.tuning(),
            submission.occasion(),
            InspectionState.OPEN);
    new TurnCheck(inspections).require(submission, open);
    Considered considered = judge.consider(attempt, open);
    InspectionRow inspection = writer.write(attempt, open, considered);
    InspectionFile file = files.find(inspection.id()).orElseThrow();
    return new Answer(
        inspection.id(), false, mapper.writeValueAsString(jsons.whole(file, attempt.locale())));
  }
}
