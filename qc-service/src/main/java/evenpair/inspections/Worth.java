package evenpair.inspections;

import evenpair.products.Products.StoredLimitSet;
import evenpair.stations.Stations;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.springframework.stereotype.Component;

/**
 * What the seatings of an inspection are worth, from the budgets of the stations that measured
 * them.
 */
@Component
class Worth {
  private final Stations stations;
  private final AttemptRows attempts;

  Worth(Stations stations, AttemptRows attempts) {
    this.stations = stations;
    this.attempts = attempts;
  }

  private record Place(String station, Instant at) {}

  /**
   * For as many seatings as the set wants: a verdict is given on all of them together.
   *
   * @return empty if the set does not ask for it, or if one of the stations has no valid budget
   */
  Optional<UsedUncertainty> of(
      PreparedAttempt attempt, Optional<InspectionRow> open, StoredLimitSet limits) {
    if (!limits.set().decision().guarded()) {
      return Optional.empty();
    }
    Place here = new Place(attempt.submission().station(), attempt.measuredAt());
    List<Optional<UsedUncertainty>> each =
        Stream.concat(open.stream().flatMap(this::earlier), Stream.of(here))
            .map(place -> at(place, limits, limits.set().seating().count()))
            .toList();
    return each.stream().allMatch(Optional::isPresent)
        ? each.stream().map(Optional::orElseThrow).reduce(UsedUncertainty::larger)
        : Optional.empty();
  }

  private Stream<Place> earlier(InspectionRow open) {
    return attempts.findByInspectionIdOrderByNumber(open.id()).stream()
        .filter(AttemptRow::valid)
        .map(row -> new Place(row.circumstances().station(), row.circumstances().measuredAt()));
  }

  private Optional<UsedUncertainty> at(Place place, StoredLimitSet limits, int seatings) {
    return stations
        .budgetAt(place.station(), limits.set().product(), limits.set().tuning(), place.at())
        .map(budget -> UsedUncertainty.of(budget.study(), budget.forSeatings(seatings)));
  }
}
