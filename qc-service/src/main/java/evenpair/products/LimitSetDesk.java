package evenpair.products;

import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.tolerance.LimitSet;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.List;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Takes drafts, sign-offs and activations of limit sets from people. */
@Component
class LimitSetDesk {
  private final VersionStore store;
  private final VersionWriting writing;
  private final SignedVersions signed;
  private final SignOffRules rules;
  private final Ids ids;

  LimitSetDesk(
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
   * @param yaml the set, in YAML or JSON
   * @param author the person's reference
   * @return the version that was drafted
   * @throws Refusal 404 for an unknown product or tuning, 422 with every problem, 409 if the
   *     version is not a new one
   */
  int draft(String product, String tuning, byte[] yaml, UUID author) {
    return writing.alone(
        () -> {
          Snapshot known = Snapshot.of(store);
          List<Golden> goldens = known.goldens(product, tuning);
          LimitSet set = read(yaml, surroundings(known, product, tuning, goldens));
          int highest =
              known.limitSets(product, tuning).stream().mapToInt(Limits::version).max().orElse(0);
          if (set.version() <= highest) {
            throw new Refusal(
                    409,
                    "version-not-new",
                    "Version "
                        + set.version()
                        + " is not new: "
                        + product
                        + " "
                        + tuning
                        + " already has version "
                        + highest
                        + ".")
                .with("field", "version")
                .with("expected", "at least " + (highest + 1));
          }
          Golden golden = known.golden(product, tuning, set.golden(), signed.now()).orElseThrow();
          store.add(
              new Limits(
                  ids.next(),
                  product,
                  tuning,
                  set.version(),
                  golden.id(),
                  Canonical.text(set),
                  Canonical.digest(set, golden.digest()),
                  author,
                  signed.now(),
                  null));
          return set.version();
        });
  }

  /**
   * Takes an older version back as a new draft: the same limits on the same golden response.
   *
   * @return the version that was drafted
   * @throws Refusal 404 if the older one is unknown
   */
  int rollBack(String product, String tuning, int older, UUID author) {
    return writing.alone(
        () -> {
          Snapshot known = Snapshot.of(store);
          Limits from = Versions.limitSet(known, product, tuning, older);
          int version =
              known.limitSets(product, tuning).stream().mapToInt(Limits::version).max().orElse(0)
                  + 1;
          LimitSet set = known.stored(from.id()).orElseThrow().set().as(version);
          store.add(
              new Limits(
                  ids.next(),
                  product,
                  tuning,
                  version,
                  from.goldenId(),
                  Canonical.text(set),
                  Canonical.digest(set, known.golden(from.goldenId()).digest()),
                  author,
                  signed.now(),
                  null));
          return version;
        });
  }

  static LimitSet read(byte[] yaml, Surroundings surroundings) {
    try {
      return LimitSetReader.read("limit set", yaml, surroundings);
    } catch (UnreadableLimits e) {
      throw VersionWriting.refusal("unreadable-limit-set", e);
    }
  }

  private static Surroundings surroundings(
      Snapshot known, String product, String tuning, List<Golden> goldens) {
    ProductDefinition definition = Versions.listed(known, product, tuning);
    TreeSet<String> names = new TreeSet<>(goldens.stream().map(Golden::name).toList());
    return new Surroundings(
        product, new TreeSet<>(List.of(tuning)), definition.earSimulator(), names);
  }

  /**
   * @throws Refusal 404 if it is unknown, 409 if it is signed already, its golden is not, or the
   *     approver is its author
   */
  void approve(String product, String tuning, int version, UUID approver, String reason) {
    writing.alone(
        () -> {
          Snapshot known = Snapshot.of(store);
          Limits limits = Versions.limitSet(known, product, tuning, version);
          Golden golden = known.golden(limits.goldenId());
          SignOffRules.requireDraft(limits.signOff());
          if (golden.signOff() == null) {
            throw new Refusal(
                409,
                "golden-response-not-approved",
                "Its golden response, version "
                    + golden.version()
                    + ", is not approved yet: approve that first.");
          }
          boolean first =
              known.limitSets(product, tuning).stream().noneMatch(row -> row.signOff() != null);
          signed.approve(limits, golden, SignOffRules.approver(limits.author(), approver), reason);
          signed.activate(limits, first ? Instant.EPOCH : signed.now());
          return version;
        });
  }

  /**
   * @param from null for now
   * @throws Refusal 404 if it is unknown, 409 if it is a draft, 422 if that time has passed
   */
  void activate(String product, String tuning, int version, Instant from) {
    writing.alone(
        () -> {
          Limits limits = Versions.limitSet(Snapshot.of(store), product, tuning, version);
          signed.activate(limits, rules.begin(limits.signOff(), from));
          return version;
        });
  }
}
