package evenpair.traceability;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/** Which units left the house, when, and under which delivery. */
public interface Dispatches {
  /**
   * @param serials as stored
   * @return by serial: the dispatches that it was part of, oldest first; others are missing
   */
  Map<String, List<Shipped>> of(Collection<String> serials);

  /**
   * @param verdict the unit's, when the dispatch was recorded
   * @param person who recorded it; null if a program did
   */
  record Shipped(
      UUID dispatch,
      String reference,
      Instant shippedAt,
      Instant recordedAt,
      String verdict,
      UUID person) {}
}
