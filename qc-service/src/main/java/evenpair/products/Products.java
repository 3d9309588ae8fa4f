package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.TuningFilters;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.Judge;
import evenpair.tolerance.LimitSet;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/**
 * What the plant makes and what it is judged by. Answers from memory once loaded; a change of a
 * version reloads.
 */
public interface Products {
  /**
   * @return every product, by key
   */
  List<Product> all();

  /**
   * @return the product with that key, if known
   */
  Optional<Product> find(String product);

  /**
   * @return the limit set of the tuning that is active at that instant, if any
   */
  Optional<StoredLimitSet> activeAt(String product, String tuning, Instant at);

  /**
   * @return one version of a limit set, approved or not, if it exists
   */
  Optional<StoredLimitSet> limitSet(String product, String tuning, int version);

  /**
   * @return the version with that id; unknown ids are a programming error
   */
  StoredLimitSet limitSet(UUID id);

  /**
   * @return every version of the tuning's limit sets, drafts included, rising
   */
  List<VersionFacts> limitSetHistory(String product, String tuning);

  /**
   * Where a version of a limit set came from.
   *
   * @param digest SHA-256, hex
   * @param madeAt when it was drafted, or read from a file for the first time
   * @param approvedAt empty for a draft
   * @param approver the person's random reference; empty for a draft and for a trusted file
   * @param reason why it was approved; empty for a draft and for a trusted file
   * @param activeFrom when it was last set to judge from; 1970 for a tuning's first version
   */
  record VersionFacts(
      int version,
      String digest,
      Instant madeAt,
      Optional<Instant> approvedAt,
      Optional<UUID> approver,
      Optional<String> reason,
      Optional<Instant> activeFrom) {}

  /**
   * @return who approved that version of a limit set, and why; empty for a draft
   */
  default Optional<Approval> approvalOf(UUID limitSet) {
    return Optional.empty();
  }

  /**
   * @param approver the person's random reference; null for a set trusted as a file in limits/
   * @param reason as given at the sign-off; null likewise
   */
  record Approval(UUID approver, String reason, Instant at) {}

  /**
   * What a derived tuning should give: for each grid point the level of the active golden response
   * of the tuning that it is derived from, plus its filters' and its overall gain as the power mean
   * over the point's band (see {@link TuningFilters#gains}), and the sum of both phases, relative
   * to the arrival of the underived response. The active golden response is the one activated last,
   * else the one that the active limit set refers to.
   *
   * @return empty if the tuning is unknown, is not derived from another, or that one has no golden
   *     response yet. Without a phase if that one has none
   */
  Optional<GoldenResponse> expectedGolden(String product, String tuning);

  /**
   * @return by tuning, in the product's order: the golden response of the limit set that is active
   *     at that instant; tunings without one are left out, and so is everything of an unknown
   *     product
   */
  default Map<String, GoldenResponse> goldens(String product, Instant at) {
    Map<String, GoldenResponse> goldens = new LinkedHashMap<>();
    for (Tuning tuning : find(product).map(Product::tunings).orElse(List.of())) {
      activeAt(product, tuning.key(), at)
          .ifPresent(stored -> goldens.put(tuning.key(), stored.golden()));
    }
    return goldens;
  }

  /**
   * Stores a new version of a golden response as a draft, to be signed by an engineer other than
   * its author. Levels and phases are kept as 32-bit floats.
   *
   * @param name the file name by which limit sets refer to it, such as {@code plain-golden.csv}
   * @param author the person's random reference
   * @return its id
   * @throws evenpair.web.Refusal 404 for an unknown product or tuning, 400 for a name that is no
   *     file name, 409 if that very response is there already
   */
  UUID draftGolden(
      String product,
      String tuning,
      String name,
      GoldenResponse golden,
      UUID author,
      Provenance provenance);

  /**
   * What a golden response was built from.
   *
   * @param units units whose curves were taken, 1 or more
   * @param spreadDb their spread at each grid point, dB (as the builder defines it)
   * @param inspections the inspections that were taken
   * @param leftOut the inspections that an engineer left out
   */
  record Provenance(int units, Curve spreadDb, List<UUID> inspections, List<UUID> leftOut) {
    public Provenance {
      inspections = List.copyOf(inspections);
      leftOut = List.copyOf(leftOut);
      if (units < 1) {
        throw new IllegalArgumentException("a golden response is built from 1 unit or more");
      }
    }

    public Provenance(int units, Curve spreadDb) {
      this(units, spreadDb, List.of(), List.of());
    }
  }

  /**
   * @param key such as {@code sedge-2}
   * @param name such as {@code Sedge 2}
   * @param maker such as {@code Saltmarsh Works}
   * @param serialPattern regular expression that a whole serial number must match
   */
  record Product(
      String key,
      String name,
      String maker,
      String serialPattern,
      EarSimulator earSimulator,
      List<Tuning> tunings) {
    public Optional<Tuning> tuning(String key) {
      return tunings.stream().filter(t -> t.key().equals(key)).findFirst();
    }
  }

  /**
   * @param required whether a unit needs a closed PASS in this tuning
   * @param from the tuning that this one is derived from, if it is a setting of a signal processor
   * @param filters what the signal processor does to that one; present with {@code from}
   */
  record Tuning(
      String key, boolean required, Optional<String> from, Optional<TuningFilters> filters) {
    /** A tuning of its own, derived from none. */
    public Tuning(String key, boolean required) {
      this(key, required, Optional.empty(), Optional.empty());
    }
  }

  /**
   * @param digest SHA-256 of its canonical form together with its golden response's, hex
   * @param judge ready to judge by it
   */
  record StoredLimitSet(
      UUID id, LimitSet set, UUID goldenId, GoldenResponse golden, String digest, Judge judge) {}
}
