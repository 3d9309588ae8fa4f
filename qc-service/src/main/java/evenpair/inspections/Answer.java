package evenpair.inspections;

import java.util.UUID;

/**
 * @param replay true: an equal request with the same Idempotency-Key had been answered before, with
 *     this
 * @param json the answer's body
 */
record Answer(UUID inspection, boolean replay, String json) {}
