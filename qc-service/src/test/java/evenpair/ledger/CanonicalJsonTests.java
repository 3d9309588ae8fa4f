package evenpair.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Arrays;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

class CanonicalJsonTests {
  /** The canonical form of a value inside an object: content is always an object. */
  private static String canonicalValue(Object value) {
    String json = canonical(Map.of("value", value));
    assertThat(json).startsWith("{\"value\":").endsWith("}");
    return json.substring("{\"value\":".length(), json.length() - 1);
  }

  private static String canonical(Object content) {
    return new String(CanonicalJson.of(content), StandardCharsets.UTF_8);
  }

  /** RFC 8785, appendix B: IEEE 754 bits and their form, from memory. */
  @ParameterizedTest
  @CsvSource({
    "0000000000000000, 0",
    "8000000000000000, 0",
    "0000000000000001, 5e-324",
    "7fefffffffffffff, 1.7976931348623157e+308",
    "4340000000000000, 9007199254740992",
    "4430000000000000, 295147905179352830000",
    "44b52d02c7e14af5, 9.999999999999997e+22",
    "44b52d02c7e14af6, 1e+23",
    "44b52d02c7e14af7, 1.0000000000000001e+23",
    "444b1ae4d6e2ef4e, 999999999999999700000",
    "444b1ae4d6e2ef50, 1e+21",
    "3eb0c6f7a0b5ed8c, 9.999999999999997e-7",
    "3eb0c6f7a0b5ed8d, 0.000001",
    "41b3de4355555555, 333333333.3333333",
    "becbf647612f3696, -0.0000033333333333333333"
  })
  void writesNumbersAsTheStandardDoes(String bits, String form) {
    assertThat(canonicalValue(Double.longBitsToDouble(Long.parseUnsignedLong(bits, 16))))
        .isEqualTo(form);
  }

  @Test
  void sortsNamesByTheirUtf16UnitsAsTheStandardDoes() {
    // RFC 8785, 3.2.3, from memory: the example's names, shuffled.
    Map<String, Object> content = new LinkedHashMap<>();
    for (String name : List.of("\u20ac", "\r", "\ufb33", "1", "\ud83d\ude00", "\u0080", "\u00f6")) {
      content.put(name, 1);
    }
    assertThat(canonical(content))
        .isEqualTo(
            "{\"\\r\":1,\"1\":1,\"\u0080\":1,\"\u00f6\":1,\"\u20ac\":1,\"\ud83d\ude00\":1,\"\ufb33\":1}");
  }

  @Test
  void escapesOnlyWhatItMust() {
    // RFC 8785, 3.2.2: the string of the example, from memory.
    assertThat(canonicalValue("\u20ac$\u000f\nA'B\"\\\\\"/"))
        .isEqualTo("\"\u20ac$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"");
  }

  @Test
  void cutsInstantsToMicroseconds() {
    assertThat(canonical(Map.of("at", Instant.parse("2026-11-25T07:00:00.123456999Z"))))
        .isEqualTo("{\"at\":\"2026-11-25T07:00:00.123456Z\"}");
  }

  @Test
  void writesRecordsListsAndNulls() {
    record Reason(String kind, Double measuredDb, List<Integer> attempts) {}
    assertThat(canonical(new Reason("window", null, List.of(2, 1))))
        .isEqualTo("{\"attempts\":[2,1],\"kind\":\"window\",\"measuredDb\":null}");
  }

  static List<Object> refused() {
    Map<String, Object> nested = new HashMap<>();
    nested.put("a", Arrays.asList(1, Double.POSITIVE_INFINITY));
    return List.of(
        Map.of("a", Double.NaN),
        nested,
        Map.of("a", new float[] {1, Float.NaN}),
        Map.of("a", 1L << 53),
        Map.of("a", Long.MIN_VALUE),
        Map.of("a", new BigDecimal("0.1")));
  }

  @ParameterizedTest
  @MethodSource("refused")
  void refusesWhatADoubleCannotCarry(Object content) {
    assertThatThrownBy(() -> CanonicalJson.of(content)).isInstanceOf(RuntimeException.class);
  }
}
