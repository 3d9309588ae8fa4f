package evenpair.ledger;

import java.math.BigInteger;
import java.util.Locale;
import java.util.Optional;

/**
 * A code that a person can read out and type: 100 bits of a record's leaf digest in Crockford's
 * base 32 with its check character, in groups of four: {@code 7ZZ0-…-4}. Source: D. Crockford,
 * "Base 32" (symbols and check value: number modulo 37), from memory.
 */
public final class RecordCode {
  private static final int BITS = 100;
  private static final int BITS_A_SYMBOL = 5;
  private static final int DIGEST_BYTES = 32;
  private static final String SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final String CHECK_SYMBOLS = SYMBOLS + "*~$=U";

  private RecordCode() {}

  /**
   * @param leafDigest SHA-256; its first 100 bits are used
   */
  static String of(byte[] leafDigest) {
    BigInteger number =
        new BigInteger(1, leafDigest).shiftRight(leafDigest.length * Byte.SIZE - BITS);
    return grouped(number);
  }

  private static String grouped(BigInteger number) {
    String symbols = encode(number, BITS / BITS_A_SYMBOL);
    return symbols.replaceAll("(.{4})", "$1-") + check(number);
  }

  /**
   * @param code as a person types it: hyphens and spaces anywhere, small letters, O for 0, I and L
   *     for 1
   * @return whether it is a code without a mistyped character, as far as its check character tells:
   *     every single wrong character and every swap of neighbours
   */
  public static boolean isWellTyped(String code) {
    return number(code).isPresent();
  }

  /**
   * @return the code in groups of four, as it is printed
   * @throws IllegalArgumentException if it is not well typed
   */
  public static String printed(String code) {
    return grouped(number(code).orElseThrow(IllegalArgumentException::new));
  }

  /**
   * @return the lowest SHA-256 that has this code
   * @throws IllegalArgumentException if it is not well typed
   */
  static byte[] lowest(String code) {
    return digest(code, 0);
  }

  /**
   * @return the highest SHA-256 that has this code
   * @throws IllegalArgumentException if it is not well typed
   */
  static byte[] highest(String code) {
    return digest(code, 1);
  }

  private static byte[] digest(String code, int fill) {
    int rest = DIGEST_BYTES * Byte.SIZE - BITS;
    BigInteger filling =
        fill == 0 ? BigInteger.ZERO : BigInteger.ONE.shiftLeft(rest).subtract(BigInteger.ONE);
    byte[] found =
        number(code)
            .orElseThrow(() -> new IllegalArgumentException("no record code"))
            .shiftLeft(rest)
            .add(filling)
            .toByteArray();
    byte[] digest = new byte[DIGEST_BYTES];
    int length = Math.min(found.length, DIGEST_BYTES);
    System.arraycopy(found, found.length - length, digest, DIGEST_BYTES - length, length);
    return digest;
  }

  private static Optional<BigInteger> number(String code) {
    String typed =
        code.replaceAll("[-\\s]", "")
            .toUpperCase(Locale.ROOT)
            .replace('O', '0')
            .replace('I', '1')
            .replace('L', '1');
    if (typed.length() != BITS / BITS_A_SYMBOL + 1) {
      return Optional.empty();
    }
    BigInteger number = BigInteger.ZERO;
    for (int place = 0; place < typed.length() - 1; place++) {
      int symbol = SYMBOLS.indexOf(typed.charAt(place));
      if (symbol < 0) {
        return Optional.empty();
      }
      number = number.shiftLeft(BITS_A_SYMBOL).add(BigInteger.valueOf(symbol));
    }
    return typed.charAt(typed.length() - 1) == check(number)
        ? Optional.of(number)
        : Optional.empty();
  }

  /**
   * @return the number's lowest {@code length} symbols, most significant first, with leading zeros
   */
  static String encode(BigInteger number, int length) {
    StringBuilder symbols = new StringBuilder();
    for (int place = length - 1; place >= 0; place--) {
      symbols.append(SYMBOLS.charAt(number.shiftRight(place * BITS_A_SYMBOL).intValue() & 0x1F));
    }
    return symbols.toString();
  }

  /**
   * @return the check symbol: the number modulo 37
   */
  static char check(BigInteger number) {
    return CHECK_SYMBOLS.charAt(number.mod(BigInteger.valueOf(CHECK_SYMBOLS.length())).intValue());
  }
}
