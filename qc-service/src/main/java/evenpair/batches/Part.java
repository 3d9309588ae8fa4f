package evenpair.batches;

import evenpair.web.Refusal;
import io.swagger.v3.oas.annotations.Parameter;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * Which units of a batch are meant, as the address says it; what is left out is not narrowed.
 *
 * @param limitSet a version, 1 upwards
 * @param from first attempts measured at this instant or later
 * @param to first attempts measured before this instant
 */
record Part(
    @Parameter(example = "sedge-2") String product,
    @Parameter(example = "plain") String tuning,
    @Parameter(example = "3", description = "version") String limitSet,
    @Parameter(example = "bench-1") String station,
    @Parameter(
            example = "2026-11-24T00:00:00Z",
            description = "units first measured at this instant or later")
        String from,
    @Parameter(
            example = "2026-11-25T00:00:00Z",
            description = "units first measured before this instant")
        String to) {
  /**
   * @return what was asked for, by the names of the address
   */
  Map<String, String> asQuery() {
    Map<String, String> query = new LinkedHashMap<>();
    put(query, "product", product);
    put(query, "tuning", tuning);
    put(query, "limitSet", limitSet);
    put(query, "station", station);
    put(query, "from", from);
    put(query, "to", to);
    return query;
  }

  private static void put(Map<String, String> query, String name, String value) {
    if (!blank(value)) {
      query.put(name, value);
    }
  }

  Integer version() {
    try {
      return blank(limitSet) ? null : Integer.valueOf(limitSet);
    } catch (NumberFormatException e) {
      throw refusal("limitSet", limitSet, "a version number such as 3");
    }
  }

  /**
   * @return null if not narrowed
   */
  Instant begin() {
    return instant("from", from);
  }

  /**
   * @return null if not narrowed
   */
  Instant end() {
    return instant("to", to);
  }

  /**
   * @return null if not narrowed, as for the others
   */
  String ofProduct() {
    return blank(product) ? null : product;
  }

  String inTuning() {
    return blank(tuning) ? null : tuning;
  }

  String bench() {
    return blank(station) ? null : station;
  }

  private static Instant instant(String field, String value) {
    try {
      return blank(value) ? null : Instant.parse(value);
    } catch (DateTimeParseException e) {
      throw refusal(field, value, "an instant such as 2026-11-24T00:00:00Z");
    }
  }

  private static boolean blank(String value) {
    return value == null || value.isBlank();
  }

  private static Refusal refusal(String field, String value, String expected) {
    return new Refusal(
            400, "invalid-parameter", field + " must be " + expected + ", was \"" + value + "\".")
        .with("field", field)
        .with("expected", expected);
  }
}
