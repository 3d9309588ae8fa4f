package evenpair.inspections;

import java.time.Instant;
import java.util.UUID;

/**
 * An inspection got its final verdict. Kept in the event publication registry until every listener
 * has done its work.
 */
public record InspectionClosed(
    UUID inspection,
    String serial,
    String batch,
    String product,
    String tuning,
    String station,
    String occasion,
    String verdict,
    Instant at) {}
