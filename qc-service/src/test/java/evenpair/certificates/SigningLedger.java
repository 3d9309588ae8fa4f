package evenpair.certificates;

import evenpair.ledger.Evidence;
import evenpair.ledger.Ledger;
import java.nio.charset.StandardCharsets;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.MessageDigest;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;

/** A ledger that does nothing but sign, with a key of its own. */
final class SigningLedger implements Ledger {
  private final PublicKey published;
  private final PrivateKey key;
  private final String keyId;

  SigningLedger() {
    try {
      KeyPair pair = KeyPairGenerator.getInstance("Ed25519").generateKeyPair();
      published = pair.getPublic();
      key =
          KeyFactory.getInstance("Ed25519")
              .generatePrivate(new PKCS8EncodedKeySpec(pair.getPrivate().getEncoded()));
      byte[] digest = MessageDigest.getInstance("SHA-256").digest(published.getEncoded());
      keyId = HexFormat.of().formatHex(Arrays.copyOf(digest, 8));
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public Signed sign(String text) {
    try {
      Signature signature = Signature.getInstance("Ed25519");
      signature.initSign(key);
      signature.update(text.getBytes(StandardCharsets.UTF_8));
      return new Signed(keyId, signature.sign());
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException(e);
    }
  }

  @Override
  public Map<String, byte[]> publicKeys() {
    return Map.of(keyId, published.getEncoded());
  }

  @Override
  public UUID append(String kind, UUID subject, Object content) {
    throw new AssertionError("nothing is sealed here");
  }

  @Override
  public UUID append(String kind, UUID subject, Object content, Evidence evidence) {
    throw new AssertionError("nothing is sealed here");
  }

  @Override
  public void append(UUID entry, String kind, UUID subject, Object content, Evidence evidence) {
    throw new AssertionError("nothing is sealed here");
  }

  @Override
  public Optional<Seal> sealOf(String kind, UUID subject) {
    return Optional.empty();
  }

  @Override
  public Optional<Sealed> byCode(String code) {
    return Optional.empty();
  }
}
