package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.stations.Block;
import evenpair.stations.Stations;
import evenpair.stations.UncertaintyBudget;
import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;

/** The real stations, of which some are blocked, studied or quiet when told to be. */
final class SwitchableStations implements Stations {
  private final Stations real;
  private final Map<String, Block> blocks = new ConcurrentHashMap<>();
  private final Map<String, UncertaintyBudget> budgets = new ConcurrentHashMap<>();
  private final Map<String, Double> floors = new ConcurrentHashMap<>();

  SwitchableStations(Stations real) {
    this.real = real;
  }

  void block(String station, Block block) {
    blocks.put(station, block);
  }

  /**
   * @param uDb the same standard uncertainty everywhere, none of it from seating, so that their
   *     number does not matter
   */
  void study(String station, UUID study, double uDb) {
    Curve none = Curve.from(hz -> 0);
    var curve = new UncertaintyBudget.ByFrequency(none, Curve.from(hz -> uDb), none);
    var number = new UncertaintyBudget.Scalar(0, uDb, 0, 0);
    Instant at = Instant.parse("2026-11-25T07:00:00Z");
    budgets.put(
        station,
        new UncertaintyBudget(study, at, at.plusSeconds(3600), curve, curve, number, number));
  }

  void idleFloor(String station, double dba) {
    floors.put(station, dba);
  }

  @Override
  public List<String> names() {
    return real.names();
  }

  @Override
  public Optional<Chain> chainAt(String station, Instant at) {
    return real.chainAt(station, at);
  }

  @Override
  public Map<String, UncertaintyBudget.Scalar> differenceOfRegions(
      String station, String product, String tuning, Instant at) {
    return real.differenceOfRegions(station, product, tuning, at);
  }

  @Override
  public Optional<Chain> chainOf(
      String station, UUID leftMicrophone, UUID rightMicrophone, UUID output, UUID correction) {
    return real.chainOf(station, leftMicrophone, rightMicrophone, output, correction);
  }

  @Override
  public Optional<Block> blockedAt(String station, Instant at) {
    return Optional.ofNullable(blocks.get(station)).or(() -> real.blockedAt(station, at));
  }

  @Override
  public Optional<Block> blockedAt(String station, String product, String tuning, Instant at) {
    return Optional.ofNullable(blocks.get(station))
        .or(() -> real.blockedAt(station, product, tuning, at));
  }

  @Override
  public Optional<UncertaintyBudget> budgetAt(
      String station, String product, String tuning, Instant at) {
    return Optional.ofNullable(budgets.get(station))
        .or(() -> real.budgetAt(station, product, tuning, at));
  }

  @Override
  public OptionalDouble idleFloorDba(String station, Channel channel, Instant at) {
    return floors.containsKey(station)
        ? OptionalDouble.of(floors.get(station))
        : real.idleFloorDba(station, channel, at);
  }

  @Override
  public List<Verified> verificationsAt(String station, Instant at) {
    return real.verificationsAt(station, at);
  }
}
