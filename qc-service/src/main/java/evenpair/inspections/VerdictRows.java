package evenpair.inspections;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.repository.Repository;

interface VerdictRows extends Repository<VerdictRow, UUID> {
  Optional<VerdictRow> findByInspectionId(UUID inspection);

  List<VerdictRow> findByInspectionIdIn(Collection<UUID> inspections);
}
