package evenpair.products;

import evenpair.products.Products.StoredLimitSet;
import evenpair.products.VersionRows.Golden;
import evenpair.products.VersionRows.Limits;
import evenpair.tolerance.Judges;
import evenpair.tolerance.LimitSet;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import java.util.UUID;
import org.springframework.stereotype.Component;

/** Limit sets as text that is not stored: read as a draft would be, and written as an export. */
@Component
public class LimitTexts {
  /** No version that is stored has it. */
  private static final UUID UNSTORED = new UUID(0, 0);

  private final StoredProducts products;
  private final SignedVersions signed;

  LimitTexts(StoredProducts products, SignedVersions signed) {
    this.products = products;
    this.signed = signed;
  }

  /**
   * Reads a set by the rules for drafts, but stores nothing: its version may be any.
   *
   * @param text YAML, or JSON with the same keys
   * @return the set with the golden response that a draft of it would have, ready to judge; its id
   *     is no stored version's
   * @throws evenpair.web.Refusal 404 for an unknown product or tuning, 413 if it is too long, 422
   *     with every problem, each with line and column
   */
  public StoredLimitSet read(String product, String tuning, byte[] text) {
    Bodies.requireShort(text);
    Snapshot known = products.snapshot();
    List<Golden> goldens = known.goldens(product, tuning);
    TreeSet<String> names = new TreeSet<>(goldens.stream().map(Golden::name).toList());
    Surroundings surroundings =
        new Surroundings(
            product,
            new TreeSet<>(List.of(tuning)),
            Versions.listed(known, product, tuning).earSimulator(),
            names);
    LimitSet set = LimitSetDesk.read(text, surroundings);
    Golden golden = known.golden(product, tuning, set.golden(), signed.now()).orElseThrow();
    return new StoredLimitSet(
        UNSTORED,
        set,
        golden.id(),
        golden.response(),
        Canonical.digest(set, golden.digest()),
        Judges.forLimits(set, golden.response()));
  }

  /**
   * @return the canonical YAML, byte for byte what an export of the set as a version would be
   */
  public String write(LimitSet set) {
    return Canonical.text(set);
  }

  /**
   * @return the set as the keys and values of its YAML: maps, lists, words and numbers
   */
  public Map<String, Object> tree(LimitSet set) {
    return LimitSetTree.of(set);
  }

  /**
   * @return the number that the tuning's next version must have at least
   * @throws evenpair.web.Refusal 404 for an unknown product or tuning
   */
  public int nextVersion(String product, String tuning) {
    Snapshot known = products.snapshot();
    Versions.known(known, product, tuning);
    return known.limitSets(product, tuning).stream().mapToInt(Limits::version).max().orElse(0) + 1;
  }

  /**
   * @param frame whose golden response the set has too
   * @return the set, ready to judge; its id is no stored version's
   */
  public StoredLimitSet with(StoredLimitSet frame, LimitSet set) {
    return new StoredLimitSet(
        UNSTORED,
        set,
        frame.goldenId(),
        frame.golden(),
        Canonical.digest(set, products.snapshot().golden(frame.goldenId()).digest()),
        Judges.forLimits(set, frame.golden()));
  }
}
