package evenpair.inspections;

import evenpair.products.Products.Product;
import java.time.Instant;
import java.util.Locale;
import java.util.Optional;

/**
 * A request with everything looked up and computed that needs no transaction.
 *
 * @param surroundings what the station was worth at the time of measurement
 * @param key Idempotency-Key, if one was sent
 * @param requestDigest see {@link RequestDigest}
 */
record PreparedAttempt(
    Submission submission,
    SentPair sent,
    HeardPair heard,
    Product product,
    Surroundings surroundings,
    Instant receivedAt,
    Optional<String> key,
    String requestDigest,
    Locale locale) {
  Instant measuredAt() {
    return surroundings.measuredAt();
  }
}
