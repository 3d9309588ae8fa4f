package evenpair.stations;

import evenpair.acoustics.EarSimulator;
import jakarta.persistence.Convert;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** Certified curves of a reference unit on a station; the newest row of a serial number counts. */
@Entity
@Immutable
@Table(name = "reference_unit")
class ReferenceUnitRow extends InsertOnlyRow {
  private String serial;
  private String product;
  private String tuning;

  @Convert(converter = EarSimulatorColumn.class)
  private EarSimulator earSimulator;

  @Embedded private MeasuredSides certified;

  protected ReferenceUnitRow() {}

  ReferenceUnitRow(
      UUID id,
      UUID stationId,
      String serial,
      String product,
      String tuning,
      EarSimulator earSimulator,
      MeasuredSides certified,
      Provenance provenance) {
    super(id, stationId, provenance);
    this.serial = serial;
    this.product = product;
    this.tuning = tuning;
    this.earSimulator = earSimulator;
    this.certified = certified;
  }

  String serial() {
    return serial;
  }

  String product() {
    return product;
  }

  String tuning() {
    return tuning;
  }

  EarSimulator earSimulator() {
    return earSimulator;
  }

  MeasuredSides certified() {
    return certified;
  }
}
