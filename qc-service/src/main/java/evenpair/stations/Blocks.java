package evenpair.stations;

import evenpair.stations.Block.Cause;
import evenpair.tolerance.Channel;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** What keeps a station from judging at one instant. */
@Service
@Transactional(readOnly = true)
class Blocks {
  private final MicrophoneCalibrationRows microphones;
  private final OutputCalibrationRows outputs;
  private final ReferenceUnitRows references;
  private final VerificationRows verifications;
  private final ClearingRows clearings;
  private final StationSettings settings;
  private final TrustSettings trust;

  Blocks(
      MicrophoneCalibrationRows microphones,
      OutputCalibrationRows outputs,
      ReferenceUnitRows references,
      VerificationRows verifications,
      ClearingRows clearings,
      StationSettings settings,
      TrustSettings trust) {
    this.microphones = microphones;
    this.outputs = outputs;
    this.references = references;
    this.verifications = verifications;
    this.clearings = clearings;
    this.settings = settings;
    this.trust = trust;
  }

  /**
   * @return every cause that holds at that instant: moved gains first, then failed verifications,
   *     oldest first
   */
  List<Block> at(StationRow station, Instant at) {
    List<Block> blocks = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      List<Drift.Reading> newest =
          microphones.newestThree(station.id(), channel, at).stream()
              .map(row -> reading(row, row.pascalPerFullScale(), row.change()))
              .toList();
      moved(Cause.MICROPHONE_CHANGED, Optional.of(channel), newest, at).ifPresent(blocks::add);
    }
    List<Drift.Reading> newest =
        outputs.newestThree(station.id(), at).stream()
            .map(row -> reading(row, row.voltsPerFullScale(), row.change()))
            .toList();
    moved(Cause.OUTPUT_CHANGED, Optional.empty(), newest, at).ifPresent(blocks::add);
    verifications.uncleared(station.id(), at).stream().map(Blocks::failed).forEach(blocks::add);
    return blocks;
  }

  /**
   * @return that the plant demands a verification of that tuning and none holds, if so
   */
  Optional<Block> unverifiedAt(StationRow station, String product, String tuning, Instant at) {
    if (!trust.verificationRequired()) {
      return Optional.empty();
    }
    List<ReferenceUnitRow> units = references.ofTuning(station.id(), product, tuning, at);
    Optional<VerificationRow> newest = verifications.newest(station.id(), product, tuning, at);
    if (units.isEmpty() || newest.filter(row -> row.validAt(at)).isPresent()) {
      return Optional.empty();
    }
    ReferenceUnitRow unit = units.get(0);
    Instant since =
        newest.map(row -> row.provenance().validUntil()).orElse(unit.provenance().measuredAt());
    return Optional.of(
        new Block(
            Cause.VERIFICATION_MISSING,
            unit.getId(),
            Optional.empty(),
            Optional.empty(),
            since,
            OptionalDouble.empty(),
            OptionalDouble.empty()));
  }

  /**
   * Tunings for which the plant demands a verification and none holds.
   *
   * @return the newest reference unit of each
   */
  List<ReferenceUnitRow> unverified(StationRow station, Instant at) {
    if (!trust.verificationRequired()) {
      return List.of();
    }
    Map<List<String>, ReferenceUnitRow> ofTuning = new LinkedHashMap<>();
    references
        .all(station.id(), at)
        .forEach(row -> ofTuning.putIfAbsent(List.of(row.product(), row.tuning()), row));
    return ofTuning.values().stream()
        .filter(row -> unverifiedAt(station, row.product(), row.tuning(), at).isPresent())
        .toList();
  }

  static Block failed(VerificationRow row) {
    Optional<VerificationRow.RegionCheck> worst = row.worst();
    return new Block(
        Cause.VERIFICATION_FAILED,
        row.getId(),
        worst.map(VerificationRow.RegionCheck::channel),
        worst.map(VerificationRow.RegionCheck::region),
        row.provenance().measuredAt(),
        worst.map(check -> OptionalDouble.of(check.deviationDb())).orElse(OptionalDouble.empty()),
        OptionalDouble.of(row.limitDb()));
  }

  private Optional<Block> moved(
      Cause cause, Optional<Channel> channel, List<Drift.Reading> newest, Instant at) {
    if (newest.isEmpty()) {
      return Optional.empty();
    }
    Set<UUID> cleared = clearings.cleared(newest.stream().map(Drift.Reading::id).toList(), at);
    return Drift.unexplained(newest, cleared, settings.changeDb())
        .map(
            reading ->
                new Block(
                    cause,
                    reading.id(),
                    channel,
                    Optional.empty(),
                    reading.at(),
                    OptionalDouble.of(reading.changeDb()),
                    OptionalDouble.of(settings.changeDb())));
  }

  private static Drift.Reading reading(InsertOnlyRow row, double value, Change change) {
    double changeDb = change.changeDb() == null ? 0 : change.changeDb();
    return new Drift.Reading(
        row.getId(), value, changeDb, change.changed(), row.provenance().measuredAt());
  }
}
