package evenpair.inspections;

import evenpair.web.Refusal;
import java.util.List;
import java.util.Optional;

/**
 * Whether an attempt may come now: the unit's earlier inspections decide. To be called under the
 * unit's lock.
 */
final class TurnCheck {
  private final InspectionRows inspections;

  TurnCheck(InspectionRows inspections) {
    this.inspections = inspections;
  }

  /**
   * @throws Refusal 409 naming what stands in the way and what may be sent
   */
  void require(Submission submission, Optional<InspectionRow> open) {
    inspections
        .findFirstBySerialAndProductNot(submission.serial(), submission.product())
        .ifPresent(
            other -> {
              throw conflict(
                  "serial-of-another-product",
                  "The serial '%s' is on record as a unit of product '%s'."
                      .formatted(submission.serial(), other.product()));
            });
    if (open.isPresent()) {
      requireContinuation(submission, open.get());
    } else {
      requireBeginning(submission);
    }
  }

  private static void requireContinuation(Submission submission, InspectionRow open) {
    if (!open.batch().equals(submission.batch())) {
      throw conflict(
              "batch-differs",
              "The open inspection of '%s' belongs to batch '%s', not '%s'."
                  .formatted(open.serial(), open.batch(), submission.batch()))
          .with("field", "batch")
          .with("expected", open.batch());
    }
    if (submission.seating() != open.expectedSeating()) {
      throw seating(
          submission, open.expectedSeating(), "has " + open.validSeatings() + " valid seatings");
    }
  }

  private void requireBeginning(Submission submission) {
    if (submission.occasion() == Occasion.PRODUCTION) {
      UnitVerdict.lastClosed(
              inspections.findBySerialOrderById(submission.serial()),
              submission.tuning(),
              Occasion.PRODUCTION)
          .ifPresent(
              closed -> {
                throw alreadyJudged(closed);
              });
    }
    if (submission.seating() != 1) {
      throw seating(
          submission, 1, "has no open inspection in tuning '" + submission.tuning() + "'");
    }
  }

  private static Refusal alreadyJudged(InspectionRow closed) {
    String detail =
        "Unit '%s' was judged %s in tuning '%s' at %s; judge it again with occasion rework, audit or return."
            .formatted(closed.serial(), closed.verdict(), closed.tuning(), closed.closedAt());
    return conflict("already-judged", detail)
        .with("field", "occasion")
        .with("choices", List.of("rework", "audit", "return"))
        .with("inspection", closed.id())
        .with("verdict", closed.verdict().name());
  }

  private static Refusal seating(Submission submission, int expected, String because) {
    String detail =
        "Unit '%s' %s, so seating %d is expected, not %d."
            .formatted(submission.serial(), because, expected, submission.seating());
    return conflict("unexpected-seating", detail)
        .with("field", "seating")
        .with("expected", expected);
  }

  private static Refusal conflict(String type, String detail) {
    return new Refusal(409, type, detail).with("part", "inspection");
  }
}
