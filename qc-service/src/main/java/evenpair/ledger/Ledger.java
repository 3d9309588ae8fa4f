package evenpair.ledger;

import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** The append-only ledger (tamper-evident, not tamper-proof). */
public interface Ledger {
  /**
   * Inserts a sealed entry in the caller's transaction (one must be open); takes no lock.
   *
   * @param kind what is sealed, such as {@code inspection-closed}
   * @param subject the record that it speaks of
   * @param content any object that Jackson writes as JSON: no free text, no names. Written as RFC
   *     8785 canonical JSON; instants are cut to microseconds
   * @return the entry's id (UUIDv7)
   */
  UUID append(String kind, UUID subject, Object content);

  /**
   * Like {@link #append(String, UUID, Object)}, with rows and files that are sealed with the entry.
   * What is not written yet is written first, so that the rows are there.
   *
   * @param evidence rows as they stand now; they must not change afterwards
   */
  UUID append(String kind, UUID subject, Object content, Evidence evidence);

  /**
   * Like {@link #append(String, UUID, Object, Evidence)}, for a row that names the entry it is
   * sealed by.
   *
   * @param entry a fresh UUIDv7
   */
  void append(UUID entry, String kind, UUID subject, Object content, Evidence evidence);

  /**
   * @return the seal of the newest entry of that kind about the subject; empty while no block holds
   *     it yet
   */
  Optional<Seal> sealOf(String kind, UUID subject);

  /**
   * @param code a record code as a person types it: {@link RecordCode#isWellTyped}
   * @return the sealed entry that it stands for, if there is one
   */
  Optional<Sealed> byCode(String code);

  /**
   * Signs a line of text with this service's key, for someone who has nothing but the published
   * key.
   *
   * @param text must not begin like JSON: what seals blocks is JSON, and must not be had here
   */
  Signed sign(String text);

  /**
   * @return every key whose signatures are trusted, by its id: X.509 encoding
   */
  Map<String, byte[]> publicKeys();

  /**
   * @param kind what is sealed
   * @param subject the record that it speaks of
   */
  record Sealed(String kind, UUID subject, Seal seal) {}

  /**
   * @param keyId which key signed
   * @param signature Ed25519, 64 bytes
   */
  record Signed(String keyId, byte[] signature) {}

  /**
   * @param entryId the entry
   * @param entryDigest SHA-256 of its canonical bytes, hex
   * @param block the block's number
   * @param code the record code: 100 bits of the leaf digest in Crockford base 32, four-character
   *     groups, check character last
   * @param keyId which key signed the block
   */
  record Seal(UUID entryId, String entryDigest, long block, String code, String keyId) {}
}
