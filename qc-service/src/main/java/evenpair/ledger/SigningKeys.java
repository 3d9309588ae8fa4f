package evenpair.ledger;

import evenpair.web.DataFolder;
import evenpair.web.DurableFiles;
import evenpair.web.StartRefused;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.PrivateKey;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.PKCS8EncodedKeySpec;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.HashMap;
import java.util.HexFormat;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;

/**
 * The Ed25519 key that signs this service's blocks, made at the first start, and every public key
 * whose blocks are trusted: {@code ledger.key} (private, PKCS#8) and {@code ledger-<key id>.pub} in
 * the data folder's {@code keys}. They stand outside the database, so that whoever rules it cannot
 * sign anew.
 */
@Component
class SigningKeys {
  private static final Logger LOG = LoggerFactory.getLogger(SigningKeys.class);
  private static final String ALGORITHM = "Ed25519";
  private static final int ID_BYTES = 8;

  private final PrivateKey privateKey;
  private final String ownId;
  private final Map<String, PublicKey> trusted = new HashMap<>();

  SigningKeys(DataFolder data) {
    Path folder = data.folder("keys");
    Path file = folder.resolve("ledger.key");
    try {
      if (!Files.exists(file)) {
        make(folder, file);
      }
      privateKey =
          KeyFactory.getInstance(ALGORITHM).generatePrivate(new PKCS8EncodedKeySpec(read(file)));
      readPublicKeys(folder);
      ownId = idOfOwnKey(folder);
    } catch (IOException | GeneralSecurityException | IllegalArgumentException e) {
      throw new StartRefused(
          "The ledger's keys in " + folder + " cannot be used: " + e.getMessage() + ".",
          "Restore ledger.key and its ledger-….pub from the backup.",
          e);
    }
  }

  /** The public key is written first: a private key without its public one would be of no use. */
  private static void make(Path folder, Path file) throws IOException, GeneralSecurityException {
    KeyPair pair = KeyPairGenerator.getInstance(ALGORITHM).generateKeyPair();
    String id = id(pair.getPublic());
    DurableFiles.writePrivate(
        folder.resolve("ledger-" + id + ".pub"), pem("PUBLIC KEY", pair.getPublic().getEncoded()));
    DurableFiles.writePrivate(file, pem("PRIVATE KEY", pair.getPrivate().getEncoded()));
    LOG.info("Made the key that seals the ledger: {} in {}. Back it up", id, folder);
  }

  private void readPublicKeys(Path folder) throws IOException, GeneralSecurityException {
    try (DirectoryStream<Path> files = Files.newDirectoryStream(folder, "ledger-*.pub")) {
      for (Path file : files) {
        PublicKey key =
            KeyFactory.getInstance(ALGORITHM).generatePublic(new X509EncodedKeySpec(read(file)));
        trusted.put(id(key), key);
      }
    }
  }

  /** Found by trying, since Java gives no public key for a private one. */
  private String idOfOwnKey(Path folder) throws GeneralSecurityException {
    byte[] probe = "which key is it".getBytes(StandardCharsets.UTF_8);
    byte[] signature = sign(probe);
    for (String id : trusted.keySet()) {
      if (verify(id, probe, signature)) {
        return id;
      }
    }
    throw new GeneralSecurityException("no ledger-….pub in " + folder + " belongs to ledger.key");
  }

  /**
   * @return first {@value #ID_BYTES} bytes of the SHA-256 of the public key's X.509 encoding, hex
   */
  private static String id(PublicKey key) {
    return HexFormat.of().formatHex(Arrays.copyOf(Digests.sha256(key.getEncoded()), ID_BYTES));
  }

  String ownId() {
    return ownId;
  }

  /**
   * @return every trusted key by its id, in X.509 encoding
   */
  Map<String, byte[]> publicKeys() {
    Map<String, byte[]> keys = new TreeMap<>();
    trusted.forEach((id, key) -> keys.put(id, key.getEncoded()));
    return keys;
  }

  byte[] sign(byte[] message) {
    try {
      Signature signature = Signature.getInstance(ALGORITHM);
      signature.initSign(privateKey);
      signature.update(message);
      return signature.sign();
    } catch (GeneralSecurityException e) {
      throw new IllegalStateException("the ledger's key cannot sign", e);
    }
  }

  /**
   * @return whether that key is among the trusted ones
   */
  boolean knows(String keyId) {
    return trusted.containsKey(keyId);
  }

  /**
   * @return false also if the key is unknown
   */
  boolean verify(String keyId, byte[] message, byte[] signed) {
    Optional<PublicKey> key = Optional.ofNullable(trusted.get(keyId));
    try {
      if (key.isEmpty()) {
        return false;
      }
      Signature signature = Signature.getInstance(ALGORITHM);
      signature.initVerify(key.get());
      signature.update(message);
      return signature.verify(signed);
    } catch (GeneralSecurityException e) {
      return false; // a signature of the wrong form is no signature
    }
  }

  private static byte[] pem(String label, byte[] encoded) {
    String body = Base64.getMimeEncoder(64, new byte[] {'\n'}).encodeToString(encoded);
    return ("-----BEGIN " + label + "-----\n" + body + "\n-----END " + label + "-----\n")
        .getBytes(StandardCharsets.US_ASCII);
  }

  private static byte[] read(Path pem) throws IOException {
    String body =
        Files.readString(pem, StandardCharsets.US_ASCII).replaceAll("-----[A-Z ]+-----", "");
    return Base64.getMimeDecoder().decode(body);
  }
}
