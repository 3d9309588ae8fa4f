package evenpair.certificates;

import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.GeneralSecurityException;
import java.security.KeyFactory;
import java.security.MessageDigest;
import java.security.PublicKey;
import java.security.Signature;
import java.security.spec.X509EncodedKeySpec;
import java.util.Arrays;
import java.util.Base64;
import java.util.HexFormat;

/**
 * Checks the signed summary of a certificate with the maker's published key. Needs nothing but a
 * JDK 17: {@code java CheckSummary.java ‹key file› '‹text of the QR code›'}. Ends with 0 if the
 * signature is the key's, 1 if it is not, 2 if something given cannot be read.
 */
public final class CheckSummary {
  private static final int PARTS = 7;
  private static final int KEY_ID_BYTES = 8;

  private CheckSummary() {}

  public static void main(String[] args) {
    System.exit(run(args, System.out));
  }

  static int run(String[] args, PrintStream out) {
    if (args.length != 2) {
      out.println("Give the file of the published key and the text of the QR code, in quotes.");
      return 2;
    }
    try {
      return check(key(Path.of(args[0])), args[1].strip(), out);
    } catch (IOException | GeneralSecurityException | IllegalArgumentException e) {
      out.println("Cannot be read: " + e.getMessage());
      return 2;
    }
  }

  private static int check(PublicKey key, String text, PrintStream out)
      throws GeneralSecurityException {
    String[] parts = text.split(" ");
    if (parts.length != PARTS || !parts[0].equals("EVENPAIR-1")) {
      out.println("This is no signed summary of a certificate: it has another form.");
      return 2;
    }
    if (!parts[1].equals(id(key))) {
      out.println("Signed with key " + parts[1] + ", but the key given is " + id(key) + ".");
      return 1;
    }
    Signature signature = Signature.getInstance("Ed25519");
    signature.initVerify(key);
    signature.update(text.substring(0, text.lastIndexOf(' ')).getBytes(StandardCharsets.UTF_8));
    if (!verified(signature, parts[PARTS - 1])) {
      out.println("NOT what the maker signed: something in it was changed.");
      return 1;
    }
    out.println("The maker's key " + parts[1] + " signed this:");
    out.println("  serial number   " + parts[3]);
    out.println("  verdict         " + parts[4]);
    out.println("  judged (UTC)    " + parts[5]);
    out.println("  sealed record   " + parts[2]);
    out.println("Compare serial number, verdict and time with the certificate.");
    return 0;
  }

  private static boolean verified(Signature signature, String encoded) {
    try {
      return signature.verify(Base64.getUrlDecoder().decode(encoded));
    } catch (GeneralSecurityException | IllegalArgumentException e) {
      return false; // a signature of the wrong form is no signature
    }
  }

  private static PublicKey key(Path file) throws IOException, GeneralSecurityException {
    String body =
        Files.readString(file, StandardCharsets.US_ASCII).replaceAll("-----[A-Z ]+-----", "");
    return KeyFactory.getInstance("Ed25519")
        .generatePublic(new X509EncodedKeySpec(Base64.getMimeDecoder().decode(body)));
  }

  private static String id(PublicKey key) throws GeneralSecurityException {
    byte[] digest = MessageDigest.getInstance("SHA-256").digest(key.getEncoded());
    return HexFormat.of().formatHex(Arrays.copyOf(digest, KEY_ID_BYTES));
  }
}
