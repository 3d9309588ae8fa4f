package evenpair.ledger;

import java.util.List;

/** Merkle tree hash of RFC 6962, section 2.1, over SHA-256. */
final class Merkle {
  private static final byte[] LEAF = {0x00};
  private static final byte[] NODE = {0x01};

  private Merkle() {}

  /**
   * @return SHA-256(0x00 ‖ data)
   */
  static byte[] leaf(byte[] data) {
    return Digests.sha256(LEAF, data);
  }

  /**
   * @param leaves leaf digests in order
   * @return the root: SHA-256(0x01 ‖ left ‖ right), split at the largest power of two below the
   *     size; SHA-256 of nothing if empty
   */
  static byte[] root(List<byte[]> leaves) {
    if (leaves.isEmpty()) {
      return Digests.sha256();
    }
    if (leaves.size() == 1) {
      return leaves.get(0);
    }
    int split = Integer.highestOneBit(leaves.size() - 1);
    return Digests.sha256(
        NODE, root(leaves.subList(0, split)), root(leaves.subList(split, leaves.size())));
  }
}
