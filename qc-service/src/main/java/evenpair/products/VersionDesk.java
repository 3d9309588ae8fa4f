package evenpair.products;

import evenpair.access.People;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.web.Ids;
import evenpair.web.Refusal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import java.util.function.Supplier;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Takes drafts, sign-offs and activations from people. One at a time over all processes, so that
 * versions stay in order.
 */
@Component
class VersionDesk {
  private final VersionStore store;
  private final SignedVersions signed;
  private final People people;
  private final Ids ids;
  private final TransactionTemplate transaction;

  VersionDesk(
      VersionStore store,
      SignedVersions signed,
      People people,
      Ids ids,
      TransactionTemplate transaction) {
    this.store = store;
    this.signed = signed;
    this.people = people;
    this.ids = ids;
    this.transaction = transaction;
  }

  /**
   * @param yaml the set, in YAML or JSON
   * @return the version that was drafted
   * @throws Refusal 404 for an unknown product or tuning, 422 with every problem, 409 if the
   *     version is not a new one
   */
  int draftLimitSet(String product, String tuning, byte[] yaml, String author) {
    return alone(
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
                  people.refer(author),
                  signed.now(),
                  null));
          return set.version();
        });
  }

  private static LimitSet read(byte[] yaml, Surroundings surroundings) {
    try {
      return LimitSetReader.read("limit set", yaml, surroundings);
    } catch (UnreadableLimits e) {
      throw refusal("unreadable-limit-set", e);
    }
  }

  private static Surroundings surroundings(
      Snapshot known, String product, String tuning, List<Golden> goldens) {
    ProductDefinition definition = Versions.product(known, product, tuning);
    TreeSet<String> names = new TreeSet<>(goldens.stream().map(Golden::name).toList());
    return new Surroundings(
        product, new TreeSet<>(List.of(tuning)), definition.earSimulator(), names);
  }

  /**
   * @param name the file name by which limit sets will refer to it
   * @return the version that was drafted
   * @throws Refusal 404 for an unknown product or tuning, 422 with every problem, 409 if that very
   *     response is there already
   */
  int draftGolden(String product, String tuning, String name, byte[] csv, String author) {
    GoldenResponse golden = readGolden(csv);
    return alone(
        () -> {
          Snapshot known = Snapshot.of(store);
          Versions.product(known, product, tuning);
          String digest = Canonical.digest(golden);
          List<Golden> versions = known.goldens(product, tuning);
          versions.stream()
              .filter(g -> g.digest().equals(digest) && g.name().equals(name))
              .findFirst()
              .ifPresent(
                  g -> {
                    throw new Refusal(
                            409,
                            "golden-response-known",
                            "This very golden response is version " + g.version() + ".")
                        .with("version", g.version());
                  });
          int version = versions.stream().mapToInt(Golden::version).max().orElse(0) + 1;
          store.add(
              new Golden(
                  ids.next(),
                  product,
                  tuning,
                  version,
                  name,
                  golden,
                  digest,
                  people.refer(author),
                  signed.now(),
                  null));
          return version;
        });
  }

  private static GoldenResponse readGolden(byte[] csv) {
    try {
      return GoldenCsv.read("golden response", csv);
    } catch (UnreadableLimits e) {
      throw refusal("unreadable-golden-response", e);
    }
  }

  private static Refusal refusal(String type, UnreadableLimits e) {
    List<Map<String, Object>> problems = e.problems().stream().map(VersionDesk::member).toList();
    LimitsProblem first = e.problems().get(0);
    return new Refusal(422, type, e.problems().size() + " problem(s), the first: " + first + ".")
        .with("place", "line " + first.line() + ", column " + first.column())
        .with("problems", problems);
  }

  private static Map<String, Object> member(LimitsProblem problem) {
    return Map.of(
        "line",
        problem.line(),
        "column",
        problem.column(),
        "path",
        problem.path(),
        "found",
        problem.found(),
        "expected",
        problem.expected());
  }

  /**
   * @throws Refusal 404 if it is unknown, 409 if it is signed already, its golden is not, or the
   *     approver is its author
   */
  void approveLimitSet(String product, String tuning, int version, String approver, String reason) {
    alone(
        () -> {
          Snapshot known = Snapshot.of(store);
          Limits limits = Versions.limitSet(known, product, tuning, version);
          Golden golden = known.golden(limits.goldenId());
          requireDraft(limits.signOff());
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
          signed.approve(limits, golden, other(limits.author(), approver), reason);
          signed.activate(limits, first ? Instant.EPOCH : signed.now());
          return version;
        });
  }

  /**
   * @throws Refusal 404 if it is unknown, 409 if it is signed already or the approver is its author
   */
  void approveGolden(String product, String tuning, int version, String approver, String reason) {
    alone(
        () -> {
          Golden golden = Versions.golden(Snapshot.of(store), product, tuning, version);
          requireDraft(golden.signOff());
          signed.approve(golden, other(golden.author(), approver), reason);
          signed.activate(golden, signed.now());
          return version;
        });
  }

  /**
   * @param from null for now
   * @throws Refusal 404 if it is unknown, 409 if it is a draft, 422 if that time has passed
   */
  void activateLimitSet(String product, String tuning, int version, Instant from) {
    alone(
        () -> {
          Limits limits = Versions.limitSet(Snapshot.of(store), product, tuning, version);
          signed.activate(limits, begin(limits.signOff(), from));
          return version;
        });
  }

  /** As {@link #activateLimitSet}: from when new limit sets mean this version by its name. */
  void activateGolden(String product, String tuning, int version, Instant from) {
    alone(
        () -> {
          Golden golden = Versions.golden(Snapshot.of(store), product, tuning, version);
          signed.activate(golden, begin(golden.signOff(), from));
          return version;
        });
  }

  private Instant begin(VersionRows.SignOff signOff, Instant from) {
    if (signOff == null) {
      throw new Refusal(
          409,
          "not-approved",
          "This version is a draft: only an approved version can be activated.");
    }
    Instant now = signed.now();
    if (from != null && from.isBefore(now)) {
      throw new Refusal(
              422,
              "time-has-passed",
              "A version cannot hold from " + from + " on: it is " + now + " now.")
          .with("field", "from")
          .with("expected", "a time that has not passed, or none for now");
    }
    return from == null ? now : from;
  }

  private static void requireDraft(VersionRows.SignOff signOff) {
    if (signOff != null) {
      throw new Refusal(
          409, "already-approved", "This version was approved at " + signOff.at() + ".");
    }
  }

  private UUID other(UUID author, String approver) {
    UUID person = people.refer(approver);
    if (person.equals(author)) {
      throw new Refusal(
              409,
              "approver-is-author",
              "An author cannot approve what they drafted: another engineer must.")
          .with("field", "approver")
          .with("expected", "someone other than the author");
    }
    return person;
  }

  private int alone(Supplier<Integer> work) {
    Integer version =
        transaction.execute(
            status -> {
              store.lock();
              Integer result = work.get();
              store.changed();
              return result;
            });
    return version;
  }
}
