package evenpair.pairing;

import evenpair.pairing.PairingJson.Pair;
import evenpair.pairing.PairingStore.Head;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** The pairs as RFC 4180 text for the bench that puts them together. */
final class PairingCsv {
  private static final String TITLE =
      "number,serial,left_earpiece,left_from,right_earpiece,right_from,stays_as_built,share_of_limit,"
          + "match_at_hz,match_difference_db,match_limit_db,balance_db,balance_limit_db,inspected";

  private PairingCsv() {}

  static String of(Head head, List<Pair> pairs) {
    return Stream.concat(Stream.of(TITLE), pairs.stream().map(PairingCsv::line))
        .collect(Collectors.joining("\r\n", "", "\r\n"));
  }

  private static String line(Pair pair) {
    return Stream.of(
            pair.number(),
            pair.serial(),
            pair.left().earpiece(),
            pair.left().serial(),
            pair.right().earpiece(),
            pair.right().serial(),
            pair.asBuilt() ? "yes" : "no",
            number(pair.cost(), 3),
            number(pair.match().atHz(), 1),
            number(pair.match().differenceDb(), 3),
            number(pair.match().limitDb(), 3),
            number(pair.balance().differenceDb(), 3),
            number(pair.balance().limitDb(), 3),
            pair.inspected() == null ? "" : pair.inspected().verdict())
        .map(PairingCsv::field)
        .collect(Collectors.joining(","));
  }

  private static String number(Double value, int digits) {
    return value == null ? "" : String.format(Locale.ROOT, "%." + digits + "f", value);
  }

  /** Serials hold letters, digits and {@code . _ -}; quotes stand for whatever else may come. */
  private static String field(Object value) {
    String text = String.valueOf(value);
    return text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n')
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }
}
