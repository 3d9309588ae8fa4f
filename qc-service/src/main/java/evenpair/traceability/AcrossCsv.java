package evenpair.traceability;

import evenpair.traceability.AcrossJson.Delivery;
import evenpair.traceability.AcrossJson.Near;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Units as RFC 4180 text, for a recall or a reply: a line for each delivery of each unit. */
final class AcrossCsv {
  private static final String TITLE =
      "serial,batch,measured_at,verdict,db,shipped,reference,shipped_at,inspection";

  private AcrossCsv() {}

  /**
   * @param shippedOnly leaves out units of which no delivery is on record
   */
  static String of(List<Near> units, boolean shippedOnly) {
    List<String> lines = new ArrayList<>();
    lines.add(TITLE);
    for (Near unit : units) {
      for (Delivery delivery : unit.shipped()) {
        lines.add(line(unit, delivery));
      }
      if (unit.shipped().isEmpty() && !shippedOnly) {
        lines.add(line(unit, null));
      }
    }
    return String.join("\r\n", lines) + "\r\n";
  }

  private static String line(Near unit, Delivery delivery) {
    return Stream.of(
            unit.serial(),
            unit.batch(),
            unit.at(),
            unit.verdict(),
            String.format(Locale.ROOT, "%.3f", unit.db()),
            delivery == null ? "no" : "yes",
            delivery == null ? "" : delivery.reference(),
            delivery == null ? "" : delivery.shippedAt(),
            unit.inspection())
        .map(value -> quoted(value.toString()))
        .collect(Collectors.joining(","));
  }

  private static String quoted(String text) {
    return text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n')
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }
}
