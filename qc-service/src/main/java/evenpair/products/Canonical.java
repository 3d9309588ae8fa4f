package evenpair.products;

import evenpair.ledger.Digests;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import java.nio.charset.StandardCharsets;

/**
 * The canonical forms, and the digests over them: equal for files that differ only in comments,
 * order or spelling.
 */
final class Canonical {
  private Canonical() {}

  static String text(ProductDefinition product) {
    return YamlWriter.write(LimitSetTree.of(product));
  }

  static String text(LimitSet set) {
    return YamlWriter.write(LimitSetTree.of(set));
  }

  static byte[] bytes(String text) {
    return text.getBytes(StandardCharsets.UTF_8);
  }

  /**
   * @return SHA-256 of the canonical YAML, hex
   */
  static String digest(ProductDefinition product) {
    return Digests.of(bytes(text(product)));
  }

  /**
   * @return SHA-256 of the canonical CSV, hex
   */
  static String digest(GoldenResponse golden) {
    return Digests.of(bytes(GoldenCsv.write(golden)));
  }

  /**
   * @return SHA-256 over the canonical YAML followed by the golden response's digest in hex
   */
  static String digest(LimitSet set, String goldenDigest) {
    return Digests.of(bytes(text(set) + goldenDigest));
  }
}
