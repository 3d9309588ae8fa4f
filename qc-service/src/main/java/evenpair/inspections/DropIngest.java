package evenpair.inspections;

import evenpair.inspections.dropfolder.Ingest;
import evenpair.web.Refusal;
import jakarta.persistence.PersistenceException;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.springframework.dao.DataAccessException;
import org.springframework.stereotype.Component;
import org.springframework.transaction.TransactionException;

/**
 * Takes sets from watched folders as if they had come over HTTP. Their Idempotency-Key is the
 * digest of what they hold, so that a set that is taken again after a kill gets its first answer.
 */
@Component
class DropIngest implements Ingest {
  /** Refusals that have their cause with the service or pass by themselves, not with the files. */
  private static final Set<String> PASSING = Set.of("unknown-station", "changed-meanwhile");

  private static final int SERVER_SIDE = 500;

  private final Intake intake;
  private final InspectionSettings settings;

  DropIngest(Intake intake, InspectionSettings settings) {
    this.intake = intake;
    this.settings = settings;
  }

  @Override
  public Taken take(byte[] inspection, List<Part> files, Instant writtenAt, Locale locale)
      throws NotNow {
    try {
      SentParts parts = SentParts.of(inspection, files, settings.curveMaxBytes());
      String key = "drop-" + RequestDigest.of(parts);
      Answer answer = intake.take(parts, Optional.of(key), locale, Optional.of(writtenAt));
      return new Taken(answer.inspection(), answer.replay(), answer.json());
    } catch (Refusal refusal) {
      if (refusal.status() >= SERVER_SIDE || PASSING.contains(refusal.type())) {
        throw new NotNow(refusal.getMessage(), refusal);
      }
      throw refusal;
    } catch (DataAccessException | TransactionException | PersistenceException e) {
      throw new NotNow("the database does not answer: " + e.getMessage(), e);
    }
  }
}
