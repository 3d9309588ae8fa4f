package evenpair.stations;

import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.springframework.data.domain.Persistable;

/**
 * One measurement of a gauge study; part and appraiser count from 0 by their place in the plan,
 * seatings from 1.
 */
@Entity
@Immutable
@Table(name = "gauge_study_capture")
class GaugeCaptureRow implements Persistable<UUID> {
  @Id private UUID id;
  private UUID studyId;
  private int part;
  private int appraiser;
  private int seating;
  @Embedded private MeasuredSides measured;
  private UUID operator;
  private Instant measuredAt;
  private Instant recordedAt;

  protected GaugeCaptureRow() {}

  GaugeCaptureRow(
      UUID id,
      UUID studyId,
      GaugePlace place,
      MeasuredSides measured,
      UUID operator,
      Instant measuredAt,
      Instant recordedAt) {
    this.id = id;
    this.studyId = studyId;
    this.part = place.part();
    this.appraiser = place.appraiser();
    this.seating = place.seating();
    this.measured = measured;
    this.operator = operator;
    this.measuredAt = measuredAt;
    this.recordedAt = recordedAt;
  }

  @Override
  public UUID getId() {
    return id;
  }

  @Override
  public boolean isNew() {
    return true;
  }

  GaugePlace place() {
    return new GaugePlace(part, appraiser, seating);
  }

  MeasuredSides measured() {
    return measured;
  }

  UUID operator() {
    return operator;
  }

  Instant measuredAt() {
    return measuredAt;
  }

  Instant recordedAt() {
    return recordedAt;
  }
}
