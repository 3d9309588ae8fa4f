package evenpair.stations;

import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A calibration of a station's output by a voltmeter's reading. */
@Entity
@Immutable
@Table(name = "output_calibration")
class OutputCalibrationRow extends InsertOnlyRow {
  @Embedded private Reading reading;

  private double voltsPerFullScale;

  @Embedded private Change change;

  protected OutputCalibrationRow() {}

  OutputCalibrationRow(
      UUID id,
      UUID stationId,
      Reading reading,
      OutputGain gain,
      Change change,
      Provenance provenance) {
    super(id, stationId, provenance);
    this.reading = reading;
    this.voltsPerFullScale = gain.voltsPerFullScale();
    this.change = change;
  }

  Reading reading() {
    return reading;
  }

  double voltsPerFullScale() {
    return voltsPerFullScale;
  }

  Change change() {
    return change;
  }

  Stations.Output toOutput() {
    return new Stations.Output(
        getId(), voltsPerFullScale, provenance().measuredAt(), provenance().validUntil());
  }

  /** The tone that was played and what the meter showed. */
  @Embeddable
  record Reading(double toneDbfs, double frequencyHz, double readingMvRms, String meterSerial) {}
}
