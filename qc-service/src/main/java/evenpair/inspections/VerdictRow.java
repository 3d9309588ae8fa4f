package evenpair.inspections;

import evenpair.tolerance.Judgement;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
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

  private boolean conditional;
  private UUID[] uncertaintyStudyIds;
  private float[] levelUncertaintyDb;
  private float[] matchUncertaintyDb;
  private Double offsetUncertaintyDb;
  private Double balanceUncertaintyDb;
  private UUID[] comparedLimitSetIds;

  @JdbcTypeCode(SqlTypes.JSON)
  private String spread;

  private UUID ledgerEntryId;
  private String softwareVersion;

  protected VerdictRow() {}

  VerdictRow(
      InspectionRow inspection,
      Judgement judgement,
      Basis basis,
      UUID ledgerEntryId,
      String softwareVersion) {
    this.inspectionId = inspection.id();
    this.verdict = inspection.verdict();
    this.judgedAt = inspection.closedAt();
    this.leftAlignmentDb = judgement.leftLevelDb();
    this.rightAlignmentDb = judgement.rightLevelDb();
    this.reasons = RecordJson.write(judgement.reasons());
    this.regions = RecordJson.write(judgement.results());
    this.conditional = judgement.conditional();
    basis.uncertainty().ifPresent(this::remember);
    this.comparedLimitSetIds = basis.compared().toArray(UUID[]::new);
    this.spread = RecordJson.write(basis.spread());
    this.ledgerEntryId = ledgerEntryId;
    this.softwareVersion = softwareVersion;
  }

  private void remember(UsedUncertainty used) {
    this.uncertaintyStudyIds = used.studies().toArray(UUID[]::new);
    this.levelUncertaintyDb = used.levelDb();
    this.matchUncertaintyDb = used.matchDb();
    this.offsetUncertaintyDb = used.offsetDb();
    this.balanceUncertaintyDb = used.balanceDb();
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

  boolean conditional() {
    return conditional;
  }

  /**
   * @return empty for simple acceptance
   */
  Optional<UsedUncertainty> uncertainty() {
    return uncertaintyStudyIds == null
        ? Optional.empty()
        : Optional.of(
            new UsedUncertainty(
                List.of(uncertaintyStudyIds),
                levelUncertaintyDb,
                matchUncertaintyDb,
                offsetUncertaintyDb,
                balanceUncertaintyDb));
  }

  List<UUID> comparedLimitSetIds() {
    return List.of(comparedLimitSetIds);
  }

  List<Spread> spread() {
    return RecordJson.readSpreads(spread);
  }
}
