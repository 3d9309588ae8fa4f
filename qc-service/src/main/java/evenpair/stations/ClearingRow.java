package evenpair.stations;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.springframework.data.domain.Persistable;

/** An engineer's word that a blocked station may judge again. */
@Entity
@Immutable
@Table(name = "station_clearing")
class ClearingRow implements Persistable<UUID> {
  @Id private UUID id;

  @Column(nullable = false)
  private UUID stationId;

  @Enumerated(EnumType.STRING)
  private Block.Cause cause;

  private UUID subjectId;
  private String reason;
  private UUID engineer;
  private Instant clearedAt;

  protected ClearingRow() {}

  ClearingRow(
      UUID id, UUID stationId, Block block, String reason, UUID engineer, Instant clearedAt) {
    this.id = id;
    this.stationId = stationId;
    this.cause = block.cause();
    this.subjectId = block.subject();
    this.reason = reason;
    this.engineer = engineer;
    this.clearedAt = clearedAt;
  }

  @Override
  public UUID getId() {
    return id;
  }

  @Override
  public boolean isNew() {
    return true;
  }

  Block.Cause cause() {
    return cause;
  }

  UUID subjectId() {
    return subjectId;
  }

  String reason() {
    return reason;
  }

  UUID engineer() {
    return engineer;
  }

  Instant clearedAt() {
    return clearedAt;
  }
}
