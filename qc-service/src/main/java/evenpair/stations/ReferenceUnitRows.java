package evenpair.stations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface ReferenceUnitRows extends Repository<ReferenceUnitRow, UUID> {
  ReferenceUnitRow save(ReferenceUnitRow row);

  Optional<ReferenceUnitRow> findById(UUID id);

  /**
   * @return all of the station that were certified at or before that instant, newest first
   */
  @Query(
      """
      select r from ReferenceUnitRow r
      where r.stationId = :stationId and r.provenance.measuredAt <= :at
      order by r.provenance.measuredAt desc, r.provenance.recordedAt desc, r.id desc""")
  List<ReferenceUnitRow> all(UUID stationId, Instant at);

  /**
   * @return those of one tuning, newest first
   */
  @Query(
      """
      select r from ReferenceUnitRow r
      where r.stationId = :stationId and r.product = :product and r.tuning = :tuning
        and r.provenance.measuredAt <= :at
      order by r.provenance.measuredAt desc, r.provenance.recordedAt desc, r.id desc""")
  List<ReferenceUnitRow> ofTuning(UUID stationId, String product, String tuning, Instant at);
}
