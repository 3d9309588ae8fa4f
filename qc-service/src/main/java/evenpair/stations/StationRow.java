package evenpair.stations;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** A station. Its note is the one thing about it that changes. */
@Entity
@Table(name = "station")
class StationRow {
  @Id private UUID id;

  @Column(nullable = false, updatable = false)
  private String name;

  private String note;

  @Column(nullable = false, updatable = false)
  private Instant createdAt;

  protected StationRow() {}

  UUID id() {
    return id;
  }

  String name() {
    return name;
  }

  String note() {
    return note;
  }

  Instant createdAt() {
    return createdAt;
  }
}
