package evenpair.inspections;

import java.time.Instant;
import java.util.Optional;

/**
 * The part {@code inspection} of a request, read and checked by itself; whether product, tuning and
 * station exist is looked up later.
 *
 * @param serial in NFC, by the general rule of {@link Names}
 * @param operator name or badge, 1 to 64 characters
 * @param seating 1 upwards
 * @param measuredAt empty: now
 * @param stimulus empty: the default one of the captures' sample rate
 * @param leftEarpiece the left earpiece's own number; null if it has none
 * @param rightEarpiece likewise
 */
record Submission(
    String serial,
    String batch,
    String product,
    String tuning,
    String station,
    String operator,
    int seating,
    Occasion occasion,
    Optional<Instant> measuredAt,
    Optional<String> stimulus,
    String leftEarpiece,
    String rightEarpiece) {}
