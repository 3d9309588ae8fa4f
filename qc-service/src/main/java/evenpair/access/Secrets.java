package evenpair.access;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.security.SecureRandom;
import java.util.Base64;

/** Random secrets and the digests that are kept of them. */
final class Secrets {
  private static final SecureRandom RANDOM = new SecureRandom();

  /** Without what is easily misread: 0 and O, 1, l and I. */
  private static final String READABLE = "abcdefghijkmnpqrstuvwxyzABCDEFGHJKLMNPQRSTUVWXYZ23456789";

  private static final int PASSWORD_GROUPS = 4;
  private static final int GROUP = 5;

  private Secrets() {}

  static byte[] bytes(int count) {
    byte[] bytes = new byte[count];
    RANDOM.nextBytes(bytes);
    return bytes;
  }

  /**
   * @return 256 random bits in letters that need no escaping in a header or a cookie
   */
  static String token() {
    return Base64.getUrlEncoder().withoutPadding().encodeToString(bytes(32));
  }

  /**
   * @return 20 characters of an alphabet of 56, about 116 bits, in groups that can be read out
   */
  static String password() {
    StringBuilder password = new StringBuilder();
    for (int n = 0; n < PASSWORD_GROUPS * GROUP; n++) {
      password.append(n > 0 && n % GROUP == 0 ? "-" : "");
      password.append(READABLE.charAt(RANDOM.nextInt(READABLE.length())));
    }
    return password.toString();
  }

  static byte[] sha256(String text) {
    try {
      return MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
    } catch (NoSuchAlgorithmException e) {
      throw new IllegalStateException("every JDK has SHA-256", e);
    }
  }
}
