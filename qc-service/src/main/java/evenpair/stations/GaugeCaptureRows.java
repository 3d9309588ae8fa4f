package evenpair.stations;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface GaugeCaptureRows extends Repository<GaugeCaptureRow, UUID> {
  GaugeCaptureRow save(GaugeCaptureRow row);

  /**
   * @return all of the study: by part, then appraiser, then seating
   */
  @Query(
      """
      select c from GaugeCaptureRow c where c.studyId = :studyId
      order by c.part, c.appraiser, c.seating""")
  List<GaugeCaptureRow> all(UUID studyId);

  /**
   * @return which of the study have been measured, without their curves
   */
  @Query(
      """
      select new evenpair.stations.GaugePlace(c.part, c.appraiser, c.seating)
      from GaugeCaptureRow c where c.studyId = :studyId
      order by c.part, c.appraiser, c.seating""")
  List<GaugePlace> places(UUID studyId);

  /**
   * @return when the newest was measured; null if there is none
   */
  @Query("select max(c.measuredAt) from GaugeCaptureRow c where c.studyId = :studyId")
  Instant newestMeasuredAt(UUID studyId);

  @Query("select count(c) from GaugeCaptureRow c where c.studyId = :studyId")
  int count(UUID studyId);

  /**
   * @return true if the study holds a file of one of the digests
   */
  @Query(
      """
      select count(c) > 0 from GaugeCaptureRow c
      where c.studyId = :studyId
        and (c.measured.leftSha256 in :digests or c.measured.rightSha256 in :digests)""")
  boolean holds(UUID studyId, Collection<String> digests);
}
