package evenpair.products;

import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import evenpair.products.VersionRows.Activation;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.products.VersionRows.SignOff;
import evenpair.web.Ids;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.UUID;
import org.springframework.stereotype.Component;

/**
 * Signs versions off and activates them, each with its ledger entry. To be called inside a
 * transaction that holds the lock.
 */
@Component
class SignedVersions {
  private final VersionStore store;
  private final Ledger ledger;
  private final Ids ids;
  private final Clock clock;

  SignedVersions(VersionStore store, Ledger ledger, Ids ids, Clock clock) {
    this.store = store;
    this.ledger = ledger;
    this.ids = ids;
    this.clock = clock;
  }

  /**
   * @return now, cut to what the database keeps, so that an instant read back is the one written
   */
  Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MICROS);
  }

  /** What the ledger seals of a golden response; {@code from} is {@code file} or {@code screen}. */
  record GoldenEntry(
      String product,
      String tuning,
      int version,
      String digest,
      String from,
      UUID author,
      UUID approver,
      Instant at) {}

  /** What the ledger seals of a limit set. */
  record LimitSetEntry(
      String product,
      String tuning,
      int version,
      String digest,
      int goldenVersion,
      String goldenDigest,
      String from,
      UUID author,
      UUID approver,
      Instant at) {}

  /** What the ledger seals of an activation, of a limit set or a golden response. */
  record ActivationEntry(
      String product, String tuning, int version, String digest, Instant activeFrom, Instant at) {}

  /**
   * @param approver null: trusted as a file
   */
  void approve(Golden golden, UUID approver, String reason) {
    SignOff signOff = new SignOff(approver, reason, now());
    store.signGolden(golden.id(), signOff);
    GoldenEntry entry =
        new GoldenEntry(
            golden.product(),
            golden.tuning(),
            golden.version(),
            golden.digest(),
            from(approver),
            golden.author(),
            approver,
            signOff.at());
    ledger.append(
        "golden-response-approved",
        golden.id(),
        entry,
        signed("golden_response", golden.id(), "golden_id"));
  }

  /**
   * @param approver null: trusted as a file
   */
  void approve(Limits limits, Golden golden, UUID approver, String reason) {
    SignOff signOff = new SignOff(approver, reason, now());
    store.signLimits(limits.id(), signOff);
    LimitSetEntry entry =
        new LimitSetEntry(
            limits.product(),
            limits.tuning(),
            limits.version(),
            limits.digest(),
            golden.version(),
            golden.digest(),
            from(approver),
            limits.author(),
            approver,
            signOff.at());
    ledger.append(
        "limit-set-approved", limits.id(), entry, signed("limit_set", limits.id(), "limit_set_id"));
  }

  /**
   * @param from the first instant at which the version judges
   */
  void activate(Limits limits, Instant from) {
    Instant now = now();
    UUID id = ids.next();
    store.activateLimits(id, new Activation(limits.id(), from.truncatedTo(ChronoUnit.MICROS), now));
    ActivationEntry entry =
        new ActivationEntry(
            limits.product(),
            limits.tuning(),
            limits.version(),
            limits.digest(),
            from.truncatedTo(ChronoUnit.MICROS),
            now);
    ledger.append(
        "limit-set-activated",
        limits.id(),
        entry,
        Evidence.ofRows("limit_set_activation", "id", id));
  }

  /**
   * @param from the first instant at which new limit sets mean this version by its name
   */
  void activate(Golden golden, Instant from) {
    Instant now = now();
    UUID id = ids.next();
    store.activateGolden(id, new Activation(golden.id(), from.truncatedTo(ChronoUnit.MICROS), now));
    ActivationEntry entry =
        new ActivationEntry(
            golden.product(),
            golden.tuning(),
            golden.version(),
            golden.digest(),
            from.truncatedTo(ChronoUnit.MICROS),
            now);
    ledger.append(
        "golden-response-activated",
        golden.id(),
        entry,
        Evidence.ofRows("golden_response_activation", "id", id));
  }

  /** A version and who signed it. */
  private static Evidence signed(String table, UUID id, String signedColumn) {
    return Evidence.ofRows(table, "id", id).andRows(table + "_sign_off", signedColumn, id);
  }

  private static String from(UUID approver) {
    return approver == null ? "file" : "screen";
  }
}
