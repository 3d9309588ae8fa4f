package evenpair.stations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface GaugeStudyRows extends Repository<GaugeStudyRow, UUID> {
  GaugeStudyRow save(GaugeStudyRow row);

  Optional<GaugeStudyRow> findById(UUID id);

  /**
   * @return studies planned on the station or with it among others, newest first
   */
  @Query(
      """
      select g from GaugeStudyRow g
      where g.stationId = :stationId or :stationId member of g.appraisers
      order by g.plannedAt desc, g.id desc""")
  List<GaugeStudyRow> ofStation(UUID stationId);

  /**
   * @return those of one tuning that were planned at or before that instant, newest first
   */
  @Query(
      """
      select g from GaugeStudyRow g
      where (g.stationId = :stationId or :stationId member of g.appraisers)
        and g.product = :product and g.tuning = :tuning and g.plannedAt <= :at
      order by g.plannedAt desc, g.id desc""")
  List<GaugeStudyRow> ofTuning(UUID stationId, String product, String tuning, Instant at);
}
