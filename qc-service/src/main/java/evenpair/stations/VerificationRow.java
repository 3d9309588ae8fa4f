package evenpair.stations;

import evenpair.tolerance.Channel;
import jakarta.persistence.CollectionTable;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Embeddable;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.hibernate.annotations.Immutable;

/** A shift verification: a reference unit measured against its certified curves. */
@Entity
@Immutable
@Table(name = "station_verification")
class VerificationRow extends InsertOnlyRow {
  private UUID referenceUnitId;
  private String product;
  private String tuning;
  private UUID limitSetId;
  private double limitDb;
  private boolean passed;

  @Embedded private MeasuredSides measured;

  @ElementCollection(fetch = FetchType.EAGER)
  @CollectionTable(
      name = "station_verification_region",
      joinColumns = @JoinColumn(name = "verification_id"))
  @OrderColumn(name = "position")
  private List<RegionCheck> regions = new ArrayList<>();

  protected VerificationRow() {}

  VerificationRow(
      UUID id,
      ReferenceUnitRow reference,
      UUID limitSetId,
      double limitDb,
      MeasuredSides measured,
      List<RegionCheck> regions,
      Provenance provenance) {
    super(id, reference.stationId(), provenance);
    this.referenceUnitId = reference.getId();
    this.product = reference.product();
    this.tuning = reference.tuning();
    this.limitSetId = limitSetId;
    this.limitDb = limitDb;
    this.measured = measured;
    this.regions = new ArrayList<>(regions);
    this.passed = regions.stream().allMatch(RegionCheck::passed);
  }

  UUID referenceUnitId() {
    return referenceUnitId;
  }

  String product() {
    return product;
  }

  String tuning() {
    return tuning;
  }

  UUID limitSetId() {
    return limitSetId;
  }

  double limitDb() {
    return limitDb;
  }

  boolean passed() {
    return passed;
  }

  MeasuredSides measured() {
    return measured;
  }

  List<RegionCheck> regions() {
    return List.copyOf(regions);
  }

  /**
   * @return the judged region that strayed most
   */
  Optional<RegionCheck> worst() {
    return regions.stream()
        .filter(RegionCheck::judged)
        .max(Comparator.comparingDouble(check -> Math.abs(check.deviationDb())));
  }

  /**
   * One region of one channel.
   *
   * @param deviationDb mean of measured less certified over the region, both smoothed; null if it
   *     could not be judged
   * @param farthestDb the largest single difference, for information
   * @param farthestHz where that is
   */
  @Embeddable
  record RegionCheck(
      @Enumerated(EnumType.STRING) Channel channel,
      String region,
      Double deviationDb,
      Double farthestDb,
      Double farthestHz,
      boolean passed) {
    boolean judged() {
      return deviationDb != null;
    }
  }
}
