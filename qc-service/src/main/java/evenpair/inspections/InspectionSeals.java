package evenpair.inspections;

import evenpair.ledger.Digests;
import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Judgement;
import evenpair.tolerance.Reason;
import evenpair.tolerance.RegionResult;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * What goes into the ledger about inspections: identifiers, numbers and digests; no names, no free
 * text.
 */
@Component
class InspectionSeals {
  static final String ATTEMPT = "attempt";
  static final String CLOSED = "inspection-closed";
  static final String ABANDONED = "inspection-abandoned";

  private final Ledger ledger;

  InspectionSeals(Ledger ledger) {
    this.ledger = ledger;
  }

  private record AttemptEntry(
      UUID inspection,
      UUID attempt,
      int number,
      int seating,
      String outcome,
      boolean valid,
      UUID operator,
      String station,
      Instant measuredAt,
      Instant receivedAt,
      String stimulus,
      Map<String, String> captures,
      Map<String, String> curves,
      Map<String, StoredIdle> idleNoise,
      AttemptRow.Chain chain,
      List<Reason> reasons,
      String softwareVersion) {}

  private record ClosedEntry(
      UUID inspection,
      String serial,
      String batch,
      String product,
      String tuning,
      String occasion,
      String station,
      String verdict,
      Instant closedAt,
      UUID limitSet,
      int limitSetVersion,
      String limitSetDigest,
      Double leftAlignmentDb,
      Double rightAlignmentDb,
      List<Reason> reasons,
      List<RegionResult> regions,
      boolean conditional,
      Map<String, Object> uncertainty,
      List<UUID> compared,
      List<Spread> spread,
      String softwareVersion) {}

  private record AbandonedEntry(
      UUID inspection, String serial, String reason, UUID operator, Instant at) {}

  UUID attempt(
      InspectionRow inspection, AttemptRow row, Optional<StoredPair> curves, List<Reason> reasons) {
    AttemptRow.Circumstances with = row.circumstances();
    return ledger.append(
        ATTEMPT,
        row.id(),
        new AttemptEntry(
            inspection.id(),
            row.id(),
            row.number(),
            row.seating(),
            row.outcome().name(),
            row.valid(),
            with.operatorRef(),
            with.station(),
            with.measuredAt(),
            with.receivedAt(),
            with.stimulus(),
            captures(row),
            curves.map(InspectionSeals::curves).orElse(Map.of()),
            curves.map(InspectionSeals::idle).orElse(Map.of()),
            row.chain(),
            reasons,
            with.softwareVersion()),
        Evidence.ofRows("attempt", "id", row.id())
            .andRows("attempt_channel", "attempt_id", row.id())
            .andFiles(captures(row).values().toArray(String[]::new)));
  }

  /**
   * To be called once the verdict is stored.
   *
   * @param entry the one that the verdict's row names
   */
  void closed(UUID entry, InspectionRow row, Judgement judgement, Basis basis) {
    ledger.append(
        entry,
        CLOSED,
        row.id(),
        new ClosedEntry(
            row.id(),
            row.serial(),
            row.batch(),
            row.product(),
            row.tuning(),
            row.occasion().word(),
            row.station(),
            row.verdict().name(),
            row.closedAt(),
            row.limitSetId(),
            row.limitSetVersion(),
            row.limitSetDigest(),
            judgement.leftLevelDb(),
            judgement.rightLevelDb(),
            judgement.reasons(),
            judgement.results(),
            judgement.conditional(),
            basis.uncertainty().map(InspectionSeals::uncertainty).orElse(Map.of()),
            basis.compared(),
            basis.spread(),
            row.softwareVersion()),
        Evidence.ofRows("inspection", "id", row.id())
            .andRows("inspection_verdict", "inspection_id", row.id()));
  }

  /**
   * @param operator null if the service itself did it
   */
  UUID abandoned(InspectionRow row, UUID operator) {
    return ledger.append(
        ABANDONED,
        row.id(),
        new AbandonedEntry(
            row.id(), row.serial(), row.abandonedBecause().word(), operator, row.closedAt()),
        Evidence.ofRows("inspection", "id", row.id()));
  }

  private static Map<String, String> captures(AttemptRow row) {
    Map<String, String> digests = new LinkedHashMap<>();
    digests.put("left", row.left().sha256());
    digests.put("right", row.right().sha256());
    if (row.idleLeftSha256() != null) {
      digests.put("idleLeft", row.idleLeftSha256());
    }
    if (row.idleRightSha256() != null) {
      digests.put("idleRight", row.idleRightSha256());
    }
    return digests;
  }

  private static Map<String, Object> uncertainty(UsedUncertainty used) {
    Map<String, Object> sealed = new LinkedHashMap<>();
    sealed.put("studies", used.studies());
    sealed.put("levelDb", Digests.ofCurve(used.levelDb()));
    sealed.put("matchDb", Digests.ofCurve(used.matchDb()));
    sealed.put("offsetDb", used.offsetDb());
    sealed.put("balanceDb", used.balanceDb());
    return sealed;
  }

  private static Map<String, String> curves(StoredPair pair) {
    Map<String, String> digests = new LinkedHashMap<>();
    for (Channel channel : Channel.values()) {
      String side = channel.word();
      StoredChannel stored = pair.of(channel);
      put(digests, side + "LevelDb", stored.levelDb());
      put(digests, side + "PhaseDeg", stored.phaseDeg());
      put(digests, side + "SnrDb", stored.snrDb());
      StoredDistortion distortion = stored.distortion();
      if (distortion != null) {
        put(digests, side + "HarmonicsDb", distortion.harmonicsDb());
        put(digests, side + "HarmonicFloorsDb", distortion.floorsDb());
        put(digests, side + "HighOrderDb", distortion.highOrderDb());
        put(digests, side + "HighOrderFloorDb", distortion.highOrderFloorDb());
      }
    }
    return digests;
  }

  private static void put(Map<String, String> digests, String name, float[] curve) {
    if (curve != null) {
      digests.put(name, Digests.ofCurve(curve));
    }
  }

  private static Map<String, StoredIdle> idle(StoredPair pair) {
    Map<String, StoredIdle> idle = new LinkedHashMap<>();
    for (Channel channel : Channel.values()) {
      if (pair.of(channel).idle() != null) {
        idle.put(channel.word(), pair.of(channel).idle());
      }
    }
    return idle;
  }
}
