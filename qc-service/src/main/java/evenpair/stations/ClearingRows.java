package evenpair.stations;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.springframework.data.jpa.repository.Query;
import org.springframework.data.repository.Repository;

interface ClearingRows extends Repository<ClearingRow, UUID> {
  ClearingRow save(ClearingRow row);

  Optional<ClearingRow> findBySubjectId(UUID subjectId);

  List<ClearingRow> findBySubjectIdIn(Collection<UUID> subjects);

  /**
   * @return which of the subjects had been cleared by that instant
   */
  @Query(
      "select c.subjectId from ClearingRow c where c.subjectId in :subjects and c.clearedAt <= :at")
  Set<UUID> cleared(Collection<UUID> subjects, Instant at);
}
