package evenpair.inspections;

import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.springframework.data.repository.Repository;

interface AttemptChannelRows extends Repository<AttemptChannelRow, AttemptChannelRow.Key> {
  List<AttemptChannelRow> findByKeyAttemptIdIn(Collection<UUID> attempts);
}
