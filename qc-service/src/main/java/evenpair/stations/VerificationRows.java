package evenpair.stations;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface VerificationRows extends Repository<VerificationRow, UUID> {
  VerificationRow save(VerificationRow row);

  Optional<VerificationRow> findById(UUID id);

  /**
   * @return verifications that failed at or before that instant and that nobody has cleared by
   *     then, oldest first
   */
  @Query(
      """
      select v from VerificationRow v
      where v.stationId = :stationId and v.passed = false and v.provenance.measuredAt <= :at
        and not exists (select c from ClearingRow c where c.subjectId = v.id and c.clearedAt <= :at)
      order by v.provenance.measuredAt, v.provenance.recordedAt, v.id""")
  List<VerificationRow> uncleared(UUID stationId, Instant at);

  /**
   * @return the newest of that tuning at or before that instant
   */
  @Query(
      """
      select v from VerificationRow v
      where v.stationId = :stationId and v.product = :product and v.tuning = :tuning
        and v.provenance.measuredAt <= :at
      order by v.provenance.measuredAt desc, v.provenance.recordedAt desc, v.id desc limit 1""")
  Optional<VerificationRow> newest(UUID stationId, String product, String tuning, Instant at);

  /**
   * @return the newest 100 of the station, newest first
   */
  @Query(
      """
      select v from VerificationRow v
      where v.stationId = :stationId
      order by v.provenance.measuredAt desc, v.provenance.recordedAt desc, v.id desc limit 100""")
  List<VerificationRow> newestHundred(UUID stationId);

  /**
   * @return the newest of each tuning that was measured at or before that instant
   */
  @Query(
      """
      select v from VerificationRow v
      where v.stationId = :stationId and v.provenance.measuredAt <= :at
        and not exists (select w from VerificationRow w
          where w.stationId = v.stationId and w.product = v.product and w.tuning = v.tuning
            and w.provenance.measuredAt <= :at and w.provenance.measuredAt > v.provenance.measuredAt)
      order by v.product, v.tuning, v.provenance.recordedAt""")
  List<VerificationRow> newestOfEachTuning(UUID stationId, Instant at);
}
