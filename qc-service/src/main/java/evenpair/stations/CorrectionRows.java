package evenpair.stations;

import java.time.Instant;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface CorrectionRows extends Repository<CorrectionRow, UUID> {
  Optional<CorrectionRow> findById(UUID id);

  CorrectionRow save(CorrectionRow row);

  /**
   * @return the newest that was measured at or before that instant
   */
  @Query(
      """
      select c from CorrectionRow c
      where c.stationId = :stationId and c.provenance.measuredAt <= :at
      order by c.provenance.measuredAt desc, c.version desc limit 1""")
  Optional<CorrectionRow> newest(UUID stationId, Instant at);

  /**
   * @return the highest version number given so far, 0 if there is none
   */
  @Query("select coalesce(max(c.version), 0) from CorrectionRow c where c.stationId = :stationId")
  int highestVersion(UUID stationId);
}
