package evenpair.web.tls;

import java.io.IOException;
import java.math.BigInteger;
import java.security.GeneralSecurityException;
import java.security.KeyPair;
import java.security.KeyPairGenerator;
import java.security.SecureRandom;
import java.security.cert.CertificateParsingException;
import java.security.cert.X509Certificate;
import java.security.spec.ECGenParameterSpec;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Date;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.bouncycastle.asn1.x500.X500Name;
import org.bouncycastle.asn1.x509.BasicConstraints;
import org.bouncycastle.asn1.x509.ExtendedKeyUsage;
import org.bouncycastle.asn1.x509.Extension;
import org.bouncycastle.asn1.x509.GeneralName;
import org.bouncycastle.asn1.x509.GeneralNames;
import org.bouncycastle.asn1.x509.KeyPurposeId;
import org.bouncycastle.asn1.x509.KeyUsage;
import org.bouncycastle.cert.CertIOException;
import org.bouncycastle.cert.jcajce.JcaX509CertificateConverter;
import org.bouncycastle.cert.jcajce.JcaX509v3CertificateBuilder;
import org.bouncycastle.operator.OperatorCreationException;
import org.bouncycastle.operator.jcajce.JcaContentSignerBuilder;

/**
 * A certificate that vouches for this service alone (it can sign no other), over a P-256 key.
 *
 * @param keys its key pair
 * @param certificate what browsers are shown
 */
record SelfSigned(KeyPair keys, X509Certificate certificate) {
  /** Browsers refuse server certificates that hold longer than 825 days. */
  static final Duration VALID = Duration.ofDays(800);

  /** Clocks of benches may be behind. */
  private static final Duration BEFORE = Duration.ofDays(1);

  private static final X500Name NAME = new X500Name("CN=Evenpair");

  /** Tells addresses from names in {@link X509Certificate#getSubjectAlternativeNames()}. */
  private static final Set<Integer> NAMES_AND_ADDRESSES =
      Set.of(GeneralName.dNSName, GeneralName.iPAddress);

  /**
   * @param names host names, under which browsers will know the service
   * @param addresses IP addresses, likewise
   */
  static SelfSigned make(
      Collection<String> names, Collection<String> addresses, Instant now, SecureRandom random) {
    try {
      KeyPairGenerator generator = KeyPairGenerator.getInstance("EC");
      generator.initialize(new ECGenParameterSpec("secp256r1"), random);
      KeyPair keys = generator.generateKeyPair();
      JcaX509v3CertificateBuilder builder =
          new JcaX509v3CertificateBuilder(
              NAME,
              new BigInteger(127, random).setBit(126),
              Date.from(now.minus(BEFORE)),
              Date.from(now.plus(VALID)),
              NAME,
              keys.getPublic());
      extend(builder, names, addresses);
      X509Certificate certificate =
          new JcaX509CertificateConverter()
              .getCertificate(
                  builder.build(
                      new JcaContentSignerBuilder("SHA256withECDSA").build(keys.getPrivate())));
      return new SelfSigned(keys, certificate);
    } catch (GeneralSecurityException | OperatorCreationException | CertIOException e) {
      throw new IllegalStateException("no certificate can be made: " + e.getMessage(), e);
    }
  }

  private static void extend(
      JcaX509v3CertificateBuilder builder, Collection<String> names, Collection<String> addresses)
      throws CertIOException {
    GeneralName[] all =
        java.util.stream.Stream.concat(
                names.stream().map(name -> new GeneralName(GeneralName.dNSName, name)),
                addresses.stream().map(address -> new GeneralName(GeneralName.iPAddress, address)))
            .toArray(GeneralName[]::new);
    builder.addExtension(Extension.subjectAlternativeName, false, new GeneralNames(all));
    builder.addExtension(Extension.basicConstraints, true, new BasicConstraints(false));
    builder.addExtension(Extension.keyUsage, true, new KeyUsage(KeyUsage.digitalSignature));
    builder.addExtension(
        Extension.extendedKeyUsage, false, new ExtendedKeyUsage(KeyPurposeId.id_kp_serverAuth));
  }

  /**
   * @return the names and addresses that a certificate is good for
   */
  static Set<String> namesOf(X509Certificate certificate) throws IOException {
    try {
      Set<String> names = new TreeSet<>();
      Collection<List<?>> all = certificate.getSubjectAlternativeNames();
      for (List<?> one : all == null ? List.<List<?>>of() : all) {
        if (NAMES_AND_ADDRESSES.contains((Integer) one.get(0))) {
          names.add(one.get(1).toString());
        }
      }
      return names;
    } catch (CertificateParsingException e) {
      throw new IOException("the certificate cannot be read: " + e.getMessage(), e);
    }
  }
}
