package evenpair.stations;

import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.UUID;
import org.springframework.stereotype.Service;

/** What other modules may ask about stations, answered by those who know. */
@Service
class StationDesk implements Stations {
  private final StationRegister register;
  private final Blocks blocks;
  private final Budgets budgets;
  private final IdleFloors idleFloors;

  StationDesk(StationRegister register, Blocks blocks, Budgets budgets, IdleFloors idleFloors) {
    this.register = register;
    this.blocks = blocks;
    this.budgets = budgets;
    this.idleFloors = idleFloors;
  }

  @Override
  public List<String> names() {
    return register.names();
  }

  @Override
  public Optional<Chain> chainAt(String station, Instant at) {
    return register.find(station).map(row -> register.newest(row, at).toChain());
  }

  @Override
  public Optional<Chain> chainOf(
      String station, UUID leftMicrophone, UUID rightMicrophone, UUID output, UUID correction) {
    return register
        .find(station)
        .flatMap(row -> register.named(row, leftMicrophone, rightMicrophone, output, correction))
        .map(StationRegister.Newest::toChain);
  }

  @Override
  public Optional<Block> blockedAt(String station, Instant at) {
    return register.find(station).flatMap(row -> blocks.at(row, at).stream().findFirst());
  }

  @Override
  public Optional<Block> blockedAt(String station, String product, String tuning, Instant at) {
    return register
        .find(station)
        .flatMap(
            row ->
                blocks.at(row, at).stream()
                    .findFirst()
                    .or(() -> blocks.unverifiedAt(row, product, tuning, at)));
  }

  @Override
  public Optional<UncertaintyBudget> budgetAt(
      String station, String product, String tuning, Instant at) {
    return register.find(station).flatMap(row -> budgets.at(row, product, tuning, at));
  }

  @Override
  public Map<String, UncertaintyBudget.Scalar> differenceOfRegions(
      String station, String product, String tuning, Instant at) {
    return register
        .find(station)
        .map(row -> budgets.differenceOfRegions(row, product, tuning, at))
        .orElse(Map.of());
  }

  @Override
  public OptionalDouble idleFloorDba(String station, Channel channel, Instant at) {
    return register
        .find(station)
        .map(row -> idleFloors.at(row, channel, at))
        .orElse(OptionalDouble.empty());
  }
}
