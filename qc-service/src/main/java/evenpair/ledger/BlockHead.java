package evenpair.ledger;

import java.time.Instant;
import java.util.HexFormat;
import java.util.Map;

/**
 * What a block's signature covers.
 *
 * @param number from 1
 * @param previous digest of the head before; 32 zero bytes in block 1
 * @param root Merkle root over the entries' contents
 * @param at when it was made, to the microsecond
 */
record BlockHead(long number, byte[] previous, byte[] root, int entries, Instant at, String keyId) {
  static final int DIGEST_BYTES = 32;

  private static final HexFormat HEX = HexFormat.of();

  /**
   * @return the canonical JSON that is signed
   */
  byte[] bytes() {
    return CanonicalJson.of(
        Map.of(
            "block", number,
            "previous", HEX.formatHex(previous),
            "root", HEX.formatHex(root),
            "entries", entries,
            "at", at,
            "keyId", keyId));
  }

  byte[] digest() {
    return Digests.sha256(bytes());
  }
}
