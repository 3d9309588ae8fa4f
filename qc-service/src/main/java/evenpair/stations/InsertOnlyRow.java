package evenpair.stations;

import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Id;
import jakarta.persistence.MappedSuperclass;
import java.time.Instant;
import java.util.UUID;
import org.springframework.data.domain.Persistable;

/**
 * A record about a station that is written once: always new when saved, so that saving never reads
 * or changes a row.
 */
@MappedSuperclass
abstract class InsertOnlyRow implements Persistable<UUID> {
  @Id
  @Column(nullable = false, updatable = false)
  private UUID id;

  @Column(nullable = false, updatable = false)
  private UUID stationId;

  @Embedded private Provenance provenance;

  protected InsertOnlyRow() {}

  InsertOnlyRow(UUID id, UUID stationId, Provenance provenance) {
    this.id = id;
    this.stationId = stationId;
    this.provenance = provenance;
  }

  @Override
  public UUID getId() {
    return id;
  }

  @Override
  public boolean isNew() {
    return true;
  }

  UUID stationId() {
    return stationId;
  }

  Provenance provenance() {
    return provenance;
  }

  /**
   * @return true if it holds at that instant: measured by then and not yet expired
   */
  boolean validAt(Instant at) {
    return !provenance.measuredAt().isAfter(at) && at.isBefore(provenance.validUntil());
  }
}
