package evenpair.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigInteger;
import java.util.HexFormat;
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
}
