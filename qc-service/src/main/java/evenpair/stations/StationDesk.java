package evenpair.stations;

import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.ArrayList;
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
  private final VerificationRows verifications;

  StationDesk(
      StationRegister register,
      Blocks blocks,
      Budgets budgets,
      IdleFloors idleFloors,
      VerificationRows verifications) {
    this.register = register;
    this.blocks = blocks;
    this.budgets = budgets;
    this.idleFloors = idleFloors;
    this.verifications = verifications;
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

  @Override
  public List<Verified> verificationsAt(String station, Instant at) {
    return register.find(station).map(row -> verified(row, at)).orElse(List.of());
  }

  private List<Verified> verified(StationRow station, Instant at) {
    List<Verified> all = new ArrayList<>();
    for (VerificationRow row : verifications.newestOfEachTuning(station.id(), at)) {
      all.add(
          new Verified(
              row.product(),
              row.tuning(),
              row.passed(),
              row.provenance().measuredAt(),
              row.provenance().validUntil()));
    }
    for (ReferenceUnitRow unit : blocks.unverified(station, at)) {
      boolean measured =
          all.stream()
              .anyMatch(
                  one ->
                      one.product().equals(unit.product()) && one.tuning().equals(unit.tuning()));
      if (!measured) {
        all.add(new Verified(unit.product(), unit.tuning(), false, null, null));
      }
    }
    return all;
  }
}
