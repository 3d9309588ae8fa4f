package evenpair.inspections;

import evenpair.tolerance.Judgement;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.hibernate.annotations.JdbcTypeCode;
import org.hibernate.type.SqlTypes;

/** What an inspection was closed with. Sealed: the table takes inserts only. */
@Entity
@Immutable
@Table(name = "inspection_verdict")
class VerdictRow {
  @Id private UUID inspectionId;

  @Enumerated(EnumType.STRING)
  private Outcome verdict;

  private Instant judgedAt;
  private Double leftAlignmentDb;
  private Double rightAlignmentDb;

  @JdbcTypeCode(SqlTypes.JSON)
  private String reasons;

  @JdbcTypeCode(SqlTypes.JSON)
  private String regions;

  private UUID ledgerEntryId;
  private String softwareVersion;

  protected VerdictRow() {}

  VerdictRow(InspectionRow inspection, Judgement judgement, UUID ledgerEntryId, String softwareVersion) {
    this.inspectionId = inspection.id();
    this.verdict = inspection.verdict();
    this.judgedAt = inspection.closedAt();
    this.leftAlignmentDb = judgement.leftLevelDb();
    this.rightAlignmentDb = judgement.rightLevelDb();
    this.reasons = ReasonJson.write(judgement.reasons());
    this.regions = ReasonJson.writeRegions(judgement.results());
    this.ledgerEntryId = ledgerEntryId;
    this.softwareVersion = softwareVersion;
  }

  UUID inspectionId() {
    return inspectionId;
  }

  Outcome verdict() {
    return verdict;
  }

  Double leftAlignmentDb() {
    return leftAlignmentDb;
  }

  Double rightAlignmentDb() {
    return rightAlignmentDb;
  }

  String reasons() {
    return reasons;
  }

  String regions() {
    return regions;
  }

  UUID ledgerEntryId() {
    return ledgerEntryId;
  }
}
