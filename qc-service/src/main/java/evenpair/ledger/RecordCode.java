package evenpair.ledger;

import java.math.BigInteger;

/**
 * A code that a person can read out and type: 100 bits of a record's leaf digest in Crockford's
 * base 32 with its check character, in groups of four: {@code 7ZZ0-…-4}. Source: D. Crockford,
 * "Base 32" (symbols and check value: number modulo 37), from memory.
 */
final class RecordCode {
  private static final int BITS = 100;
  private static final int BITS_A_SYMBOL = 5;
  private static final String SYMBOLS = "0123456789ABCDEFGHJKMNPQRSTVWXYZ";
  private static final String CHECK_SYMBOLS = SYMBOLS + "*~$=U";

  private RecordCode() {}

  /**
   * @param leafDigest SHA-256; its first 100 bits are used
   */
  static String of(byte[] leafDigest) {
    BigInteger number =
        new BigInteger(1, leafDigest).shiftRight(leafDigest.length * Byte.SIZE - BITS);
    String symbols = encode(number, BITS / BITS_A_SYMBOL);
    return symbols.replaceAll("(.{4})", "$1-") + check(number);
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
