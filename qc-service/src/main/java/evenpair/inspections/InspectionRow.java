package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.Verdict;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/**
 * One inspection. Changes only through {@link #take}, {@link #close} and {@link #abandon}, and only
 * while open.
 */
@Entity
@Table(name = "inspection")
class InspectionRow {
  @Id private UUID id;
  private String serial;
  private String batch;
  private String product;
  private String tuning;
  private String station;
  private UUID operatorRef;

  @Enumerated(EnumType.STRING)
  private Occasion occasion;

  private String leftEarpiece;
  private String rightEarpiece;
  private UUID limitSetId;
  private int limitSetVersion;
  private String limitSetDigest;
  private String earSimulator;
  private int seatingsWanted;
  private int triesAllowed;

  @Enumerated(EnumType.STRING)
  private InspectionState state;

  @Enumerated(EnumType.STRING)
  private Outcome verdict;

  @Enumerated(EnumType.STRING)
  private Outcome lastAttempt;

  private int validSeatings;
  private int tries;
  private Instant startedAt;
  private Instant lastAttemptAt;
  private Instant closedAt;

  @Enumerated(EnumType.STRING)
  private AbandonReason abandonedBecause;

  private String softwareVersion;

  protected InspectionRow() {}

  /** Opens an inspection; its first attempt follows in the same transaction. */
  InspectionRow(
      UUID id,
      Submission sent,
      UUID operatorRef,
      StoredLimitSet limits,
      Instant measuredAt,
      String softwareVersion) {
    this.id = id;
    this.serial = sent.serial();
    this.batch = sent.batch();
    this.product = sent.product();
    this.tuning = sent.tuning();
    this.station = sent.station();
    this.operatorRef = operatorRef;
    this.occasion = sent.occasion();
    this.leftEarpiece = sent.leftEarpiece();
    this.rightEarpiece = sent.rightEarpiece();
    this.limitSetId = limits.id();
    this.limitSetVersion = limits.set().version();
    this.limitSetDigest = limits.digest();
    this.earSimulator = limits.set().earSimulator().label();
    this.seatingsWanted = limits.set().seating().count();
    this.triesAllowed = limits.set().seating().tries();
    this.state = InspectionState.OPEN;
    this.startedAt = measuredAt;
    this.softwareVersion = softwareVersion;
  }

  /** Notes an attempt that has been stored. */
  void take(Course course, Instant receivedAt) {
    requireOpen("take another attempt");
    lastAttempt = course.outcome();
    lastAttemptAt = receivedAt;
    validSeatings += course.valid() ? 1 : 0;
    tries += course.outcome().countsAsTry() ? 1 : 0;
  }

  /**
   * @param verdict PASS or FAIL, final
   */
  void close(Verdict verdict, Instant at) {
    requireOpen("be closed");
    this.verdict =
        switch (verdict) {
          case PASS -> Outcome.PASS;
          case FAIL -> Outcome.FAIL;
          case RESEAT, INVALID ->
              throw new IllegalArgumentException(verdict + " does not close an inspection");
        };
    this.state = InspectionState.CLOSED;
    this.closedAt = at;
  }

  void abandon(AbandonReason reason, Instant at) {
    requireOpen("be abandoned");
    this.abandonedBecause = reason;
    this.state = InspectionState.ABANDONED;
    this.closedAt = at;
  }

  private void requireOpen(String what) {
    if (state != InspectionState.OPEN) {
      throw new IllegalStateException(
          "inspection %s cannot %s: it is %s".formatted(id, what, state.word()));
    }
  }

  /**
   * @return what the operator does next: {@code done}, {@code reseat} or {@code another-seating}
   */
  String next() {
    if (state != InspectionState.OPEN) {
      return "done";
    }
    return lastAttempt == Outcome.VALID ? "another-seating" : "reseat";
  }

  /**
   * @return the seating that the next attempt carries
   */
  int expectedSeating() {
    return validSeatings + 1;
  }

  UUID id() {
    return id;
  }

  String serial() {
    return serial;
  }

  String batch() {
    return batch;
  }

  String product() {
    return product;
  }

  String tuning() {
    return tuning;
  }

  String station() {
    return station;
  }

  UUID operatorRef() {
    return operatorRef;
  }

  Occasion occasion() {
    return occasion;
  }

  String leftEarpiece() {
    return leftEarpiece;
  }

  String rightEarpiece() {
    return rightEarpiece;
  }

  UUID limitSetId() {
    return limitSetId;
  }

  int limitSetVersion() {
    return limitSetVersion;
  }

  String limitSetDigest() {
    return limitSetDigest;
  }

  String earSimulator() {
    return earSimulator;
  }

  int seatingsWanted() {
    return seatingsWanted;
  }

  int triesAllowed() {
    return triesAllowed;
  }

  InspectionState state() {
    return state;
  }

  /**
   * @return PASS or FAIL; null unless closed
   */
  Outcome verdict() {
    return verdict;
  }

  Outcome lastAttempt() {
    return lastAttempt;
  }

  int validSeatings() {
    return validSeatings;
  }

  int tries() {
    return tries;
  }

  Instant startedAt() {
    return startedAt;
  }

  Instant lastAttemptAt() {
    return lastAttemptAt;
  }

  /**
   * @return when it was closed or abandoned; null while open
   */
  Instant closedAt() {
    return closedAt;
  }

  AbandonReason abandonedBecause() {
    return abandonedBecause;
  }

  String softwareVersion() {
    return softwareVersion;
  }
}
