package evenpair.stations;

import jakarta.persistence.CollectionTable;
import jakarta.persistence.Column;
import jakarta.persistence.ElementCollection;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.FetchType;
import jakarta.persistence.Id;
import jakarta.persistence.JoinColumn;
import jakarta.persistence.OrderColumn;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.springframework.data.domain.Persistable;

/** The plan of a gauge study: which parts, measured by whom or where, how often. */
@Entity
@Immutable
@Table(name = "gauge_study")
class GaugeStudyRow implements Persistable<UUID> {
  /** What the appraisers of a study are. */
  enum AppraiserKind {
    OPERATOR,
    STATION;

    /**
     * @return as a plan names them: {@code operators} or {@code stations}
     */
    String word() {
      return this == OPERATOR ? "operators" : "stations";
    }
  }

  @Id private UUID id;

  @Column(nullable = false)
  private UUID stationId;

  private String product;
  private String tuning;

  @Enumerated(EnumType.STRING)
  private AppraiserKind appraiserKind;

  private int seatings;
  private UUID plannedBy;
  private Instant plannedAt;

  @ElementCollection(fetch = FetchType.EAGER)
  @CollectionTable(name = "gauge_study_part", joinColumns = @JoinColumn(name = "study_id"))
  @OrderColumn(name = "position")
  @Column(name = "serial")
  private List<String> parts = new ArrayList<>();

  @ElementCollection(fetch = FetchType.EAGER)
  @CollectionTable(name = "gauge_study_appraiser", joinColumns = @JoinColumn(name = "study_id"))
  @OrderColumn(name = "position")
  @Column(name = "appraiser")
  private List<UUID> appraisers = new ArrayList<>();

  protected GaugeStudyRow() {}

  GaugeStudyRow(
      UUID id,
      UUID stationId,
      String product,
      String tuning,
      AppraiserKind appraiserKind,
      List<String> parts,
      List<UUID> appraisers,
      int seatings,
      UUID plannedBy,
      Instant plannedAt) {
    this.id = id;
    this.stationId = stationId;
    this.product = product;
    this.tuning = tuning;
    this.appraiserKind = appraiserKind;
    this.parts = new ArrayList<>(parts);
    this.appraisers = new ArrayList<>(appraisers);
    this.seatings = seatings;
    this.plannedBy = plannedBy;
    this.plannedAt = plannedAt;
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

  String product() {
    return product;
  }

  String tuning() {
    return tuning;
  }

  AppraiserKind appraiserKind() {
    return appraiserKind;
  }

  List<String> parts() {
    return List.copyOf(parts);
  }

  List<UUID> appraisers() {
    return List.copyOf(appraisers);
  }

  int seatings() {
    return seatings;
  }

  UUID plannedBy() {
    return plannedBy;
  }

  Instant plannedAt() {
    return plannedAt;
  }

  /**
   * @return how many captures make it complete
   */
  int wanted() {
    return parts.size() * appraisers.size() * seatings;
  }
}
