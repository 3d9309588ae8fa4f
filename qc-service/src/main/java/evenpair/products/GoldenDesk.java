package evenpair.products;

import evenpair.products.Products.Provenance;
import evenpair.products.VersionRows.Golden;
import evenpair.tolerance.GoldenResponse;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Takes drafts, sign-offs and activations of golden responses. */
@Component
class GoldenDesk {
  private final VersionStore store;
  private final VersionWriting writing;
  private final SignedVersions signed;
  private final SignOffRules rules;
  private final Ids ids;

  GoldenDesk(
      VersionStore store,
      VersionWriting writing,
      SignedVersions signed,
      SignOffRules rules,
      Ids ids) {
    this.store = store;
    this.writing = writing;
    this.signed = signed;
    this.rules = rules;
    this.ids = ids;
  }

  /**
   * @return the version that was drafted
   * @throws Refusal as {@link #draft(String, String, String, GoldenResponse, UUID, Provenance)},
   *     and 422 with every problem
   */
  int draft(String product, String tuning, String name, byte[] csv, UUID author) {
    GoldenResponse golden = read(csv);
    requireName(name);
    return writing.alone(() -> add(product, tuning, name, golden, author, null)).version();
  }

  /**
   * @param name the file name by which limit sets will refer to it
   * @param author the person's reference
   * @return the version that was drafted
   * @throws Refusal 400 for a name that is no file name, 404 for an unknown product or tuning, 409
   *     if that very response is there already
   */
  Golden draft(
      String product,
      String tuning,
      String name,
      GoldenResponse golden,
      UUID author,
      Provenance provenance) {
    requireName(name);
    return writing.alone(() -> add(product, tuning, name, golden, author, provenance));
  }

  private Golden add(
      String product,
      String tuning,
      String name,
      GoldenResponse response,
      UUID author,
      Provenance provenance) {
    Snapshot known = Snapshot.of(store);
    Versions.listed(known, product, tuning);
    String digest = Canonical.digest(response);
    List<Golden> versions = known.goldens(product, tuning);
    versions.stream()
        .filter(g -> g.digest().equals(digest) && g.name().equals(name))
        .findFirst()
        .ifPresent(GoldenDesk::refuseKnown);
    int version = versions.stream().mapToInt(Golden::version).max().orElse(0) + 1;
    Golden golden =
        new Golden(
            ids.next(),
            product,
            tuning,
            version,
            name,
            response,
            digest,
            author,
            signed.now(),
            provenance,
            null);
    store.add(golden);
    return golden;
  }

  private static void refuseKnown(Golden golden) {
    throw new Refusal(
            409,
            "golden-response-known",
            "This very golden response is version " + golden.version() + ".")
        .with("version", golden.version());
  }

  private static void requireName(String name) {
    if (name == null || !LimitSetReader.GOLDEN.matcher(name).matches()) {
      throw new Refusal(
              400, "invalid-parameter", "\"name\" must be a file name such as plain-golden.csv.")
          .with("field", "name")
          .with("expected", "a file name such as plain-golden.csv");
    }
  }

  private static GoldenResponse read(byte[] csv) {
    try {
      return GoldenCsv.read("golden response", csv);
    } catch (UnreadableLimits e) {
      throw VersionWriting.refusal("unreadable-golden-response", e);
    }
  }

  /**
   * @throws Refusal 404 if it is unknown, 409 if it is signed already or the approver is its author
   */
  void approve(String product, String tuning, int version, UUID approver, String reason) {
    writing.alone(
        () -> {
          Golden golden = Versions.golden(Snapshot.of(store), product, tuning, version);
          SignOffRules.requireDraft(golden.signOff());
          signed.approve(golden, SignOffRules.approver(golden.author(), approver), reason);
          signed.activate(golden, signed.now());
          return version;
        });
  }

  /**
   * @param from the first instant at which new limit sets mean this version by its name; null for
   *     now
   * @throws Refusal 404 if it is unknown, 409 if it is a draft, 422 if that time has passed
   */
  void activate(String product, String tuning, int version, Instant from) {
    writing.alone(
        () -> {
          Golden golden = Versions.golden(Snapshot.of(store), product, tuning, version);
          signed.activate(golden, rules.begin(golden.signOff(), from));
          return version;
        });
  }
}
