package evenpair.stations;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface IdleFloorRows extends Repository<IdleFloorRow, UUID> {
  IdleFloorRow save(IdleFloorRow row);

  /**
   * @return the newest that was measured at or before that instant
   */
  @Query(
      """
      select f from IdleFloorRow f
      where f.stationId = :stationId and f.provenance.measuredAt <= :at
      order by f.provenance.measuredAt desc, f.provenance.recordedAt desc, f.id desc limit 1""")
  Optional<IdleFloorRow> newest(UUID stationId, Instant at);
}
