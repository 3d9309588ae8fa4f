package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import java.util.Optional;

/**
 * An attempt thought through to its end, before anything is written.
 *
 * @param curves what is stored of it; empty if no level could be given
 * @param judging what it was judged by
 */
record Considered(Optional<StoredPair> curves, Judging judging, Course course) {
  StoredLimitSet limits() {
    return judging.limits();
  }
}
