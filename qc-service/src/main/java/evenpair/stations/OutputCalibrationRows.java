package evenpair.stations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface OutputCalibrationRows extends Repository<OutputCalibrationRow, UUID> {
  Optional<OutputCalibrationRow> findById(UUID id);

  OutputCalibrationRow save(OutputCalibrationRow row);

  /**
   * @return the newest that was measured at or before that instant
   */
  @Query(
      """
      select c from OutputCalibrationRow c
      where c.stationId = :stationId and c.provenance.measuredAt <= :at
      order by c.provenance.measuredAt desc, c.provenance.recordedAt desc, c.id desc limit 1""")
  Optional<OutputCalibrationRow> newest(UUID stationId, Instant at);

  /**
   * @return the three newest that were measured at or before that instant, newest first
   */
  @Query(
      """
      select c from OutputCalibrationRow c
      where c.stationId = :stationId and c.provenance.measuredAt <= :at
      order by c.provenance.measuredAt desc, c.provenance.recordedAt desc, c.id desc limit 3""")
  List<OutputCalibrationRow> newestThree(UUID stationId, Instant at);

  /**
   * @return the newest 100, newest first
   */
  @Query(
      """
      select c from OutputCalibrationRow c
      where c.stationId = :stationId
      order by c.provenance.measuredAt desc, c.provenance.recordedAt desc, c.id desc limit 100""")
  List<OutputCalibrationRow> newestHundred(UUID stationId);
}
