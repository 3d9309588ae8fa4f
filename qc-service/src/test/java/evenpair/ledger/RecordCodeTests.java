package evenpair.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecordCodeTests {
  /**
   * By hand: 1234 = 1·32² + 6·32 + 18, symbols 1, 6, J; 1234 = 33·37 + 13, check symbol D. 36 is
   * the last check symbol, U.
   */
  @ParameterizedTest
  @CsvSource({
    "0, 000, 0",
    "1234, 16J, D",
    "31, 00Z, Z",
    "32, 010, *",
    "33, 011, ~",
    "34, 012, $",
    "35, 013, =",
    "36, 014, U",
    "37, 015, 0"
  })
  void followsCrockfordsTable(long number, String symbols, char check) {
    assertThat(RecordCode.encode(BigInteger.valueOf(number), 3)).isEqualTo(symbols);
    assertThat(RecordCode.check(BigInteger.valueOf(number))).isEqualTo(check);
  }

  @Test
  void showsTheFirstHundredBitsInGroupsOfFour() {
    byte[] digest = HexFormat.of().parseHex("ff".repeat(12) + "f0" + "00".repeat(19));
    // 100 ones: twenty times Z. 2^100 − 1 modulo 37: 2^36 ≡ 1 (Fermat), 2^100 ≡ 2^28 ≡ 12, so 11,
    // which is B.
    assertThat(RecordCode.of(digest)).isEqualTo("ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-B");
  }

  @Test
  void keepsLeadingZeros() {
    byte[] digest = HexFormat.of().parseHex("00".repeat(12) + "1f" + "ff".repeat(19));
    assertThat(RecordCode.of(digest)).isEqualTo("0000-0000-0000-0000-0001-1");
  }

  @Test
  void readsWhatItPrintedHoweverItIsTyped() {
    byte[] digest = Digests.sha256("a record".getBytes(StandardCharsets.UTF_8));
    String code = RecordCode.of(digest);

    for (String typed :
        List.of(
            code, code.toLowerCase(Locale.ROOT), code.replace("-", ""), code.replace('-', ' '))) {
      assertThat(RecordCode.isWellTyped(typed)).isTrue();
      assertThat(RecordCode.printed(typed)).isEqualTo(code);
    }
    assertThat(Arrays.compareUnsigned(RecordCode.lowest(code), digest)).isNotPositive();
    assertThat(Arrays.compareUnsigned(RecordCode.highest(code), digest)).isNotNegative();
  }

  /** 100 bits are 12 bytes and a half: the rest of the digest is free. */
  @Test
  void spansAllDigestsThatHaveTheCode() {
    assertThat(RecordCode.lowest("ZZZZ-ZZZZ-ZZZZ-ZZZZ-ZZZZ-B"))
        .isEqualTo(HexFormat.of().parseHex("ff".repeat(12) + "f0" + "00".repeat(19)));
    assertThat(RecordCode.highest("0000-0000-0000-0000-0001-1"))
        .isEqualTo(HexFormat.of().parseHex("00".repeat(12) + "1f" + "ff".repeat(19)));
  }

  /** The modulus 37 is prime and above every symbol's value; shown by trying all. */
  @Test
  void findsEverySingleWrongCharacterAndEverySwapOfNeighbours() {
    String code = RecordCode.of(Digests.sha256("a record".getBytes(StandardCharsets.UTF_8)));
    String plain = code.replace("-", "");
    for (int place = 0; place < plain.length() - 1; place++) {
      for (char other : "0123456789ABCDEFGHJKMNPQRSTVWXYZ".toCharArray()) {
        if (other != plain.charAt(place)) {
          String wrong = plain.substring(0, place) + other + plain.substring(place + 1);
          assertThat(RecordCode.isWellTyped(wrong)).as(wrong).isFalse();
        }
      }
      char next = plain.charAt(place + 1);
      if (place < plain.length() - 2 && next != plain.charAt(place)) {
        String swapped =
            plain.substring(0, place) + next + plain.charAt(place) + plain.substring(place + 2);
        assertThat(RecordCode.isWellTyped(swapped)).as(swapped).isFalse();
      }
    }
  }

  @Test
  void takesLettersForTheDigitsTheyLookLike() {
    assertThat(RecordCode.isWellTyped("OOOO-0000-0000-0000-000I-l")).isTrue();
  }
}
