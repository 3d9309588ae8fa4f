package evenpair.batches;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.RecordedUnits.RecordedUnit;
import evenpair.stations.Stations;
import evenpair.tolerance.Uncertainty;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.springframework.stereotype.Component;

/**
 * How well a batch was measured: the uncertainty budgets of its stations, pooled over its units.
 */
@Component
class BatchMeasurement {
  private final Stations stations;

  BatchMeasurement(Stations stations) {
    this.stations = stations;
  }

  /**
   * @param seatings how many valid seatings the set combines
   * @return each station of the units with its uncertainty when it measured the last of them
   */
  List<StationShare> shares(List<BatchUnit> units, String product, String tuning, int seatings) {
    return shares(
        units.stream().map(unit -> new Measured(unit.station(), unit.at())).toList(),
        product,
        tuning,
        seatings);
  }

  /** As {@link #shares(List, String, String, int)}, of recorded units. */
  List<StationShare> sharesOf(
      List<RecordedUnit> units, String product, String tuning, int seatings) {
    return shares(
        units.stream().map(unit -> new Measured(unit.station(), unit.at())).toList(),
        product,
        tuning,
        seatings);
  }

  private record Measured(String station, Instant at) {}

  private List<StationShare> shares(
      Collection<Measured> units, String product, String tuning, int seatings) {
    Map<String, Integer> count = new LinkedHashMap<>();
    Map<String, Instant> last = new LinkedHashMap<>();
    for (Measured unit : units) {
      count.merge(unit.station(), 1, Integer::sum);
      last.merge(unit.station(), unit.at(), (a, b) -> a.isAfter(b) ? a : b);
    }
    List<StationShare> shares = new ArrayList<>();
    count.forEach(
        (station, measured) ->
            shares.add(
                new StationShare(
                    station,
                    measured,
                    stations
                        .budgetAt(station, product, tuning, last.get(station))
                        .map(budget -> budget.forSeatings(seatings)))));
    return shares;
  }

  /**
   * @param units how many of the batch it measured
   * @param uncertainty empty without a valid budget
   */
  record StationShare(String station, int units, Optional<Uncertainty> uncertainty) {}

  /**
   * Standard uncertainties of one measured value from any of the stations: √(Σ n·u²/Σ n), the
   * mixture's, over those that have a budget.
   */
  record Pooled(Curve levelDb, Curve matchDb, double offsetDb, double balanceDb) {
    /**
     * @return empty if no station has a budget
     */
    static Optional<Pooled> of(List<StationShare> shares) {
      List<StationShare> told = shares.stream().filter(s -> s.uncertainty().isPresent()).toList();
      if (told.isEmpty()) {
        return Optional.empty();
      }
      return Optional.of(
          new Pooled(
              Curve.of(pooled(told, u -> u.levelDb().toArray())),
              Curve.of(pooled(told, u -> u.matchDb().toArray())),
              pooled(told, u -> new double[] {u.offsetDb()})[0],
              pooled(told, u -> new double[] {u.balanceDb()})[0]));
    }

    /** An absent value in one of them leaves the pooled one absent. */
    private static double[] pooled(
        List<StationShare> shares, Function<Uncertainty, double[]> values) {
      double[] squares = new double[Grid.POINTS];
      int units = 0;
      for (StationShare share : shares) {
        double[] u = values.apply(share.uncertainty().orElseThrow());
        squares = Arrays.copyOf(squares, u.length);
        for (int i = 0; i < u.length; i++) {
          squares[i] += share.units() * u[i] * u[i];
        }
        units += share.units();
      }
      int all = units;
      return Arrays.stream(squares).map(square -> Math.sqrt(square / all)).toArray();
    }
  }
}
