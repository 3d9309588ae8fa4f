package evenpair.web.tls;

import evenpair.web.DurableFiles;
import evenpair.web.StartRefused;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyStore;
import java.security.SecureRandom;
import java.security.cert.Certificate;
import java.security.cert.X509Certificate;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Base64;
import java.util.Collection;
import java.util.HexFormat;
import java.util.TreeSet;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * The service's own certificate in {@code <data>/tls}: {@code evenpair.p12} with the key, {@code
 * password} of that file, and {@code evenpair.crt} to be trusted by browsers. Made at the first
 * start; anew only when it runs out or lacks a name that is wanted, since whoever trusted the old
 * one must trust the new one.
 */
final class CertificateStore {
  private static final Logger LOG = LoggerFactory.getLogger(CertificateStore.class);
  private static final String ALIAS = "evenpair";

  /** Renewed before browsers refuse it. */
  private static final Duration RENEWED_BEFORE = Duration.ofDays(30);

  private final Path folder;
  private final Clock clock;
  private final SecureRandom random = new SecureRandom();

  CertificateStore(Path folder, Clock clock) {
    this.folder = folder;
    this.clock = clock;
  }

  /** Where key and certificate lie, and how the file is opened. */
  record Ready(Path file, String password, X509Certificate certificate) {}

  /**
   * @param names host names that it must be good for
   * @param addresses IP addresses, likewise
   * @throws StartRefused if the files cannot be read or written
   */
  Ready ready(Collection<String> names, Collection<String> addresses) {
    try {
      Path file = folder.resolve("evenpair.p12");
      Path secret = folder.resolve("password");
      if (Files.exists(file) && Files.exists(secret)) {
        String password = Files.readString(secret).strip();
        X509Certificate known = read(file, password);
        if (isGood(known, names)) {
          return new Ready(file, password, known);
        }
      }
      return make(file, secret, names, addresses);
    } catch (IOException | GeneralSecurityException e) {
      throw new StartRefused(
          "The certificate in " + folder + " cannot be used: " + e.getMessage() + ".",
          "Move that folder away: the next start makes a new one, which browsers must trust anew.",
          e);
    }
  }

  /** Addresses come and go with the network, so that a missing one is no reason for a new one. */
  private boolean isGood(X509Certificate known, Collection<String> names) throws IOException {
    Instant until = known.getNotAfter().toInstant();
    return clock.instant().plus(RENEWED_BEFORE).isBefore(until)
        && SelfSigned.namesOf(known).containsAll(names);
  }

  private Ready make(Path file, Path secret, Collection<String> names, Collection<String> addresses)
      throws IOException, GeneralSecurityException {
    byte[] bytes = new byte[32];
    random.nextBytes(bytes);
    String password = HexFormat.of().formatHex(bytes);
    SelfSigned made = SelfSigned.make(names, addresses, clock.instant(), random);
    KeyStore store = KeyStore.getInstance("PKCS12");
    store.load(null, null);
    store.setKeyEntry(
        ALIAS,
        made.keys().getPrivate(),
        password.toCharArray(),
        new Certificate[] {made.certificate()});
    ByteArrayOutputStream whole = new ByteArrayOutputStream();
    store.store(whole, password.toCharArray());
    DurableFiles.writePrivate(secret, (password + "\n").getBytes(StandardCharsets.UTF_8));
    DurableFiles.writePrivate(file, whole.toByteArray());
    DurableFiles.writePrivate(folder.resolve("evenpair.crt"), pem(made.certificate()));
    LOG.info(
        "A certificate was made for {}. Browsers must trust {}",
        String.join(", ", new TreeSet<>(SelfSigned.namesOf(made.certificate()))),
        folder.resolve("evenpair.crt"));
    return new Ready(file, password, made.certificate());
  }

  private static X509Certificate read(Path file, String password)
      throws IOException, GeneralSecurityException {
    KeyStore store = KeyStore.getInstance("PKCS12");
    try (InputStream in = Files.newInputStream(file)) {
      store.load(in, password.toCharArray());
    }
    if (store.getCertificate(ALIAS) instanceof X509Certificate certificate) {
      return certificate;
    }
    throw new IOException(file + " holds no certificate of that name");
  }

  private static byte[] pem(X509Certificate certificate) throws GeneralSecurityException {
    String body =
        Base64.getMimeEncoder(64, "\n".getBytes(StandardCharsets.US_ASCII))
            .encodeToString(certificate.getEncoded());
    return ("-----BEGIN CERTIFICATE-----\n" + body + "\n-----END CERTIFICATE-----\n")
        .getBytes(StandardCharsets.US_ASCII);
  }
}
