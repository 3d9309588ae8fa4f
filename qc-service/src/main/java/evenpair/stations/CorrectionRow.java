package evenpair.stations;

import evenpair.acoustics.Curve;
import evenpair.tolerance.Channel;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderBy;
import jakarta.persistence.Table;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A numbered version of a station's left/right correction. */
@Entity
@Immutable
@Table(name = "station_correction")
class CorrectionRow extends InsertOnlyRow {
  private int version;
  private String referenceUnit;
  private String stimulus;
  private float[] leftMinusRightDb;
  private float[] uncertaintyDb;
  private double scatterDb;
  private UUID leftCalibration;
  private UUID rightCalibration;

  @ElementCollection
  @CollectionTable(
      name = "station_correction_capture",
      joinColumns = @JoinColumn(name = "correction_id"))
  @OrderBy("swapped, seating, channel")
  private List<UsedCapture> captures = new ArrayList<>();

  protected CorrectionRow() {}

  CorrectionRow(
      UUID id, UUID stationId, int version, Source source, SwapStudy study, Provenance provenance) {
    super(id, stationId, provenance);
    this.version = version;
    this.referenceUnit = source.referenceUnit();
    this.stimulus = source.stimulus();
    this.leftMinusRightDb = study.leftMinusRight().toFloats();
    this.uncertaintyDb = study.uncertainty().toFloats();
    this.scatterDb = study.scatterDb();
    this.leftCalibration = source.leftCalibration();
    this.rightCalibration = source.rightCalibration();
    this.captures = new ArrayList<>(source.captures());
  }

  int version() {
    return version;
  }

  String referenceUnit() {
    return referenceUnit;
  }

  String stimulus() {
    return stimulus;
  }

  float[] leftMinusRightDb() {
    return leftMinusRightDb.clone();
  }

  float[] uncertaintyDb() {
    return uncertaintyDb.clone();
  }

  double scatterDb() {
    return scatterDb;
  }

  Stations.Correction toCorrection() {
    return new Stations.Correction(
        getId(),
        version,
        Curve.ofFloats(leftMinusRightDb),
        Curve.ofFloats(uncertaintyDb),
        provenance().measuredAt(),
        provenance().validUntil());
  }

  /** What the study was made from. */
  record Source(
      String referenceUnit,
      String stimulus,
      UUID leftCalibration,
      UUID rightCalibration,
      List<UsedCapture> captures) {}

  /**
   * @param channel the simulator channel, whichever earpiece sat on it
   */
  @Embeddable
  record UsedCapture(
      @Column(nullable = false) boolean swapped,
      @Enumerated(EnumType.STRING) @Column(nullable = false) Channel channel,
      @Column(nullable = false) int seating,
      @Column(nullable = false) String sha256) {}
}
