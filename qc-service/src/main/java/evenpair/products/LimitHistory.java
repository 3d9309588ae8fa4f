package evenpair.products;

import java.time.Instant;
import java.util.List;
import java.util.UUID;

/** Which limits held when, and who signed them: for whoever must explain a verdict later. */
public interface LimitHistory {
  /**
   * @return the signed versions of a tuning's limit set, oldest first
   */
  List<Signed> of(String product, String tuning);

  /**
   * @param author the person's random reference; null for a set that came as a file
   * @param approver likewise
   * @param reason as signed; null for a file
   * @param activeFrom every instant from which it was set to judge, rising
   */
  record Signed(
      UUID id,
      int version,
      String digest,
      UUID author,
      UUID approver,
      String reason,
      Instant signedAt,
      List<Instant> activeFrom) {
    public Signed {
      activeFrom = List.copyOf(activeFrom);
    }
  }
}
