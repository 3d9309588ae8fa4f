package evenpair.inspections;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.springframework.data.jpa.repository.JpaSpecificationExecutor;
import org.springframework.data.repository.Repository;

interface InspectionRows
    extends Repository<InspectionRow, UUID>, JpaSpecificationExecutor<InspectionRow> {
  Optional<InspectionRow> findById(UUID id);

  List<InspectionRow> findBySerialOrderById(String serial);

  List<InspectionRow> findByIdIn(Collection<UUID> ids);

  List<InspectionRow> findBySerialIn(Collection<String> serials);

  Optional<InspectionRow> findBySerialAndProductAndTuningAndOccasionAndState(
      String serial, String product, String tuning, Occasion occasion, InspectionState state);

  Optional<InspectionRow> findFirstBySerialAndProductNot(String serial, String product);

  List<InspectionRow> findByStateAndLastAttemptAtBefore(InspectionState state, Instant limit);
}
