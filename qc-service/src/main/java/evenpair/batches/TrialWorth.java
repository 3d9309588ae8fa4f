package evenpair.batches;

import evenpair.acoustics.Curve;
import evenpair.batches.BatchMeasurement.StationShare;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Uncertainty;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What the measurements of a trial are worth: a stated u, else what judged the unit when it was
 * recorded, else the budget of its station when it measured the last of the units.
 */
final class TrialWorth {
  private final Optional<Uncertainty> stated;
  private final List<StationShare> shares;

  private TrialWorth(Optional<Uncertainty> stated, List<StationShare> shares) {
    this.stated = stated;
    this.shares = List.copyOf(shares);
  }

  /**
   * @param u standard uncertainty of one earpiece's level in dB, alike at every point; a difference
   *     of two has √2 of it
   */
  static TrialWorth of(
      OptionalDouble u, TrialUnits units, LimitSet set, BatchMeasurement measurement) {
    if (u.isPresent()) {
      Uncertainty everywhere = everywhere(u.getAsDouble());
      return new TrialWorth(Optional.of(everywhere), alike(units, everywhere));
    }
    return new TrialWorth(
        Optional.empty(),
        measurement.sharesOf(units.drawn(), set.product(), set.tuning(), set.seating().count()));
  }

  private static Uncertainty everywhere(double u) {
    double pair = u * Math.sqrt(2);
    return new Uncertainty(Curve.from(hz -> u), Curve.from(hz -> pair), u, pair);
  }

  private static List<StationShare> alike(TrialUnits units, Uncertainty everywhere) {
    Map<String, Integer> count = new LinkedHashMap<>();
    units.drawn().forEach(unit -> count.merge(unit.station(), 1, Integer::sum));
    return count.entrySet().stream()
        .map(e -> new StationShare(e.getKey(), e.getValue(), Optional.of(everywhere)))
        .toList();
  }

  boolean stated() {
    return stated.isPresent();
  }

  /**
   * @return the stations with what their measurements are worth, for the risks
   */
  List<StationShare> shares() {
    return shares;
  }

  Optional<Uncertainty> of(RecordedUnit unit) {
    return of(new TrialUnits.Group(unit.station(), unit.uncertainty()));
  }

  Optional<Uncertainty> of(TrialUnits.Group group) {
    return stated.or(group::recorded).or(() -> budget(group.station()));
  }

  private Optional<Uncertainty> budget(String station) {
    return shares.stream()
        .filter(share -> share.station().equals(station))
        .findFirst()
        .flatMap(StationShare::uncertainty);
  }
}
