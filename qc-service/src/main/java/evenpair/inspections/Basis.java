package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * What a verdict rests on beside the curves and the limit set.
 *
 * @param uncertainty empty for simple acceptance, and for a unit that never sealed
 * @param compared limit sets of the other tunings that it was compared with
 * @param spread of its seatings
 */
record Basis(Optional<UsedUncertainty> uncertainty, List<UUID> compared, List<Spread> spread) {
  Basis {
    compared = List.copyOf(compared);
    spread = List.copyOf(spread);
  }

  static Basis of(Course.Closing closing, Judging judging) {
    return closing.seatings().isEmpty()
        ? new Basis(Optional.empty(), List.of(), List.of())
        : new Basis(
            judging.uncertainty(),
            judging.others().stream().map(StoredLimitSet::id).toList(),
            Spread.of(closing.seatings(), judging.set()));
  }
}
