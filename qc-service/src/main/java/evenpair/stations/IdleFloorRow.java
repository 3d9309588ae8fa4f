package evenpair.stations;

import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** The station's own noise with nothing connected. */
@Entity
@Immutable
@Table(name = "station_idle_floor")
class IdleFloorRow extends InsertOnlyRow {
  private double leftDba;
  private double rightDba;
  private String leftSha256;
  private String rightSha256;

  protected IdleFloorRow() {}

  IdleFloorRow(
      UUID id,
      UUID stationId,
      double leftDba,
      double rightDba,
      String leftSha256,
      String rightSha256,
      Provenance provenance) {
    super(id, stationId, provenance);
    this.leftDba = leftDba;
    this.rightDba = rightDba;
    this.leftSha256 = leftSha256;
    this.rightSha256 = rightSha256;
  }

  double leftDba() {
    return leftDba;
  }

  double rightDba() {
    return rightDba;
  }

  String leftSha256() {
    return leftSha256;
  }

  String rightSha256() {
    return rightSha256;
  }
}
