package evenpair.stations;

import evenpair.access.SignedIn;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Service;
import org.springframework.transaction.annotation.Transactional;

/** Engineers let a blocked station judge again: who, when and why is sealed. */
@Service
@Transactional
class Clearings {
  /** Why a block was cleared. */
  enum Reason {
    GAIN_RESTORED,
    PART_REPLACED,
    CLEANED,
    CALIBRATOR_AT_FAULT,
    REFERENCE_UNIT_AT_FAULT,
    SEATED_WRONG,
    CHECKED_AND_ACCEPTED;

    String word() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    static List<String> words() {
      return Arrays.stream(values()).map(Reason::word).toList();
    }
  }

  private final StationRegister register;
  private final StationRows stations;
  private final Blocks blocks;
  private final VerificationRows verifications;
  private final ClearingRows clearings;
  private final SignedIn signedIn;
  private final Ledger ledger;
  private final Ids ids;
  private final Clock clock;

  Clearings(
      StationRegister register,
      StationRows stations,
      Blocks blocks,
      VerificationRows verifications,
      ClearingRows clearings,
      SignedIn signedIn,
      Ledger ledger,
      Ids ids,
      Clock clock) {
    this.register = register;
    this.stations = stations;
    this.blocks = blocks;
    this.verifications = verifications;
    this.clearings = clearings;
    this.signedIn = signedIn;
    this.ledger = ledger;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * Clears all that blocks the station now.
   *
   * @throws Refusal 404 for an unknown station, 400 for an unknown reason, 409 if nothing blocks it
   */
  List<ClearingRow> clear(String station, VerificationRequests.Clearing request) {
    StationRow row = lock(station);
    String reason = reason(request.reason());
    List<Block> present = blocks.at(row, clock.instant());
    if (present.isEmpty()) {
      throw new Refusal(
          409,
          "station-not-blocked",
          "Station '" + station + "' is not blocked: nothing to clear.");
    }
    List<ClearingRow> made = new ArrayList<>();
    for (Block block : present) {
      made.add(add(row, block, reason, request.engineer()));
    }
    return made;
  }

  /**
   * Clears one failed verification.
   *
   * @throws Refusal 404 for an unknown station or verification, 400 for an unknown reason, 409 if
   *     it passed or has been cleared
   */
  ClearingRow clear(String station, UUID verification, VerificationRequests.Clearing request) {
    StationRow row = lock(station);
    String reason = reason(request.reason());
    VerificationRow failed =
        verifications
            .findById(verification)
            .filter(found -> found.stationId().equals(row.id()))
            .orElseThrow(
                () ->
                    new Refusal(
                        404,
                        "unknown-verification",
                        "Station '" + station + "' has no verification " + verification + "."));
    Optional<ClearingRow> before = clearings.findBySubjectId(verification);
    if (failed.passed() || before.isPresent()) {
      String why =
          failed.passed() ? "passed" : "was cleared at " + before.orElseThrow().clearedAt();
      throw new Refusal(
          409, "station-not-blocked", "That verification " + why + ": nothing to clear.");
    }
    return add(row, Blocks.failed(failed), reason, request.engineer());
  }

  private StationRow lock(String station) {
    StationRow row = register.require(station);
    stations.lock(row.id());
    return row;
  }

  private ClearingRow add(StationRow row, Block block, String reason, String engineer) {
    Instant now = clock.instant().truncatedTo(ChronoUnit.MICROS);
    ClearingRow made =
        clearings.save(
            new ClearingRow(
                ids.next(), row.id(), block, reason, signedIn.signer("engineer", engineer), now));
    Map<String, Object> entry = new LinkedHashMap<>();
    entry.put("id", made.getId().toString());
    entry.put("station", row.name());
    entry.put("cause", block.cause().word());
    entry.put("subject", block.subject().toString());
    entry.put("reason", reason);
    entry.put("engineer", made.engineer().toString());
    entry.put("clearedAt", now.toString());
    ledger.append(
        "clearing", made.getId(), entry, Evidence.ofRows("station_clearing", "id", made.getId()));
    return made;
  }

  private static String reason(String word) {
    if (!Reason.words().contains(word)) {
      throw new Refusal(400, "invalid-field", "The field 'reason' must be a word from the list.")
          .with("field", "reason")
          .with("choices", Reason.words());
    }
    return word;
  }
}
