package evenpair.inspections;

import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.products.Products.Tuning;
import evenpair.tolerance.Reason;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.springframework.stereotype.Component;

/**
 * Thinks an attempt through: level, mounting, noise, verdict. Reads, writes nothing; to be called
 * under the unit's lock.
 */
@Component
class AttemptJudge {
  private final Products products;
  private final InspectionFiles files;
  private final Worth worth;
  private final DoubledCaptures doubled;
  private final InspectionSettings settings;

  AttemptJudge(
      Products products,
      InspectionFiles files,
      Worth worth,
      DoubledCaptures doubled,
      InspectionSettings settings) {
    this.products = products;
    this.files = files;
    this.worth = worth;
    this.doubled = doubled;
    this.settings = settings;
  }

  /**
   * @param open the inspection that it continues; empty if it begins one
   */
  Considered consider(PreparedAttempt attempt, Optional<InspectionRow> open) {
    StoredLimitSet limits =
        open.map(row -> products.limitSet(row.limitSetId())).orElseGet(() -> active(attempt));
    ChainCheck.requireSameSimulator(attempt.surroundings().chain(), limits.set());
    Levelling.Levelled levelled = levelled(attempt, limits);
    Prior prior = open.map(row -> files.prior(row.id())).orElse(Prior.NOTHING);
    Judging judging =
        new Judging(
            limits,
            worth.of(attempt, open, limits),
            others(attempt.submission(), attempt.receivedAt()));
    return new Considered(levelled.curves(), judging, Course.of(levelled, prior, judging));
  }

  private Levelling.Levelled levelled(PreparedAttempt attempt, StoredLimitSet limits) {
    Optional<Reason> blocked = attempt.surroundings().block().map(StationBlocks::reason);
    if (blocked.isPresent()) {
      return Levelling.Levelled.refused(List.of(blocked.get()));
    }
    List<Reason> doubles = doubled.of(attempt);
    if (!doubles.isEmpty()) {
      return Levelling.Levelled.refused(doubles);
    }
    return Levelling.level(
        attempt.heard(), attempt.surroundings(), limits.set(), settings.driveToleranceDb());
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

  private List<StoredLimitSet> others(Submission submission, Instant at) {
    return products.find(submission.product()).orElseThrow().tunings().stream()
        .map(Tuning::key)
        .filter(tuning -> !tuning.equals(submission.tuning()))
        .flatMap(tuning -> products.activeAt(submission.product(), tuning, at).stream())
        .toList();
  }
}
