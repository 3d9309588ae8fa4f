package evenpair.stations;

import jakarta.persistence.Embeddable;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;

/**
 * Who measured it, when, until when it holds, and when the service wrote it down. Instants are cut
 * to microseconds, as the database keeps them.
 *
 * @param operator random reference of the person
 */
@Embeddable
record Provenance(UUID operator, Instant measuredAt, Instant validUntil, Instant recordedAt) {
  static Provenance of(UUID operator, Instant measuredAt, Duration valid, Instant now) {
    Instant at = measuredAt.truncatedTo(ChronoUnit.MICROS);
    return new Provenance(operator, at, at.plus(valid), now.truncatedTo(ChronoUnit.MICROS));
  }
}
