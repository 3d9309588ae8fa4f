package evenpair.inspections;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.Repository;

interface AttemptRows extends Repository<AttemptRow, UUID> {
  List<AttemptRow> findByInspectionIdOrderByNumber(UUID inspection);

  List<AttemptRow> findByInspectionIdInOrderByNumber(Collection<UUID> inspections);

  Optional<AttemptRow> findByInspectionIdAndNumber(UUID inspection, int number);

  int countByInspectionId(UUID inspection);
}
