package evenpair.inspections;

import evenpair.web.Refusal;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads the fields of one strict JSON object: nothing is coerced, an unknown or repeated field is a
 * problem, and all problems are collected before the request is refused.
 */
final class JsonFields {
  private static final JsonMapper STRICT =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build();

  /**
   * @param field the field's name @param problem what is wrong @param expected what would be right
   */
  record Problem(String field, String problem, String expected) {}

  private static final String UNKNOWN = "is not known";

  private final String part;
  private final JsonNode object;
  private final List<Problem> problems = new ArrayList<>();

  private JsonFields(String part, JsonNode object, Set<String> known) {
    this.part = part;
    this.object = object;
    for (String field : object.propertyNames()) {
      if (!known.contains(field)) {
        add(field, UNKNOWN, "one of " + String.join(", ", known.stream().sorted().toList()));
      }
    }
  }

  /**
   * @param part what the object is called in a refusal
   * @throws Refusal 400 if the bytes are not one JSON object
   */
  static JsonFields read(String part, byte[] json, Set<String> known) {
    JsonNode node;
    try {
      node = STRICT.readTree(json);
    } catch (JacksonException e) {
      throw unreadable(part, e);
    }
    if (node == null || !node.isObject()) {
      throw new Refusal(400, "invalid-json", "The part '" + part + "' must be one JSON object.")
          .with("part", part);
    }
    return new JsonFields(part, node, known);
  }

  private static Refusal unreadable(String part, JacksonException e) {
    String place =
        "line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr();
    return new Refusal(
            400,
            "invalid-json",
            "The part '" + part + "' is not valid JSON: " + e.getOriginalMessage())
        .with("part", part)
        .with("place", place)
        .with("expected", "one JSON object in UTF-8");
  }

  /**
   * @return the text of a field that must be there; an empty string, with a problem noted, if it is
   *     not
   */
  String text(String field, int longest) {
    return optionalText(field, longest)
        .orElseGet(() -> missing(field, "a text of 1 to " + longest + " characters"));
  }

  Optional<String> optionalText(String field, int longest) {
    JsonNode node = object.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    String text = node.isString() ? node.stringValue().strip() : "";
    boolean fits = !text.isEmpty() && text.codePointCount(0, text.length()) <= longest;
    if (!fits || text.codePoints().anyMatch(Character::isISOControl)) {
      add(field, "is not usable", "a text of 1 to " + longest + " characters");
      return Optional.of("");
    }
    return Optional.of(text);
  }

  /**
   * @return the name in NFC; an empty string, with a problem noted, if it is missing or breaks
   *     {@link Names}
   */
  String name(String field) {
    return optionalName(field).orElseGet(() -> missing(field, Names.RULE));
  }

  Optional<String> optionalName(String field) {
    JsonNode node = object.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    Optional<String> name = node.isString() ? Names.accept(node.stringValue()) : Optional.empty();
    if (name.isEmpty()) {
      add(field, "breaks the rule for such names", Names.RULE);
      return Optional.of("");
    }
    return name;
  }

  /**
   * @return the whole number, or the fallback if the field is absent
   */
  int wholeNumber(String field, int lowest, int highest, int fallback) {
    JsonNode node = object.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return fallback;
    }
    boolean fits = node.isIntegralNumber() && node.canConvertToInt();
    if (!fits || node.intValue() < lowest || node.intValue() > highest) {
      add(field, "is out of range", "a whole number from " + lowest + " to " + highest);
      return fallback;
    }
    return node.intValue();
  }

  Optional<Instant> instant(String field) {
    JsonNode node = object.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    try {
      return Optional.of(
          OffsetDateTime.parse(node.isString() ? node.stringValue() : "").toInstant());
    } catch (DateTimeException e) {
      add(field, "is not a time", "an ISO 8601 time with its zone, such as 2026-11-25T07:00:00Z");
      return Optional.empty();
    }
  }

  /**
   * @return the choice under the word; empty if the field is absent, or with a problem noted if the
   *     word is unknown
   */
  <T> Optional<T> choice(String field, Function<String, Optional<T>> named, List<String> words) {
    JsonNode node = object.path(field);
    if (node.isMissingNode() || node.isNull()) {
      return Optional.empty();
    }
    Optional<T> found = node.isString() ? named.apply(node.stringValue()) : Optional.empty();
    if (found.isEmpty()) {
      add(field, "is not a known choice", "one of " + String.join(", ", words));
    }
    return found;
  }

  String missing(String field, String expected) {
    add(field, "is missing", expected);
    return "";
  }

  private void add(String field, String problem, String expected) {
    problems.add(new Problem(field, problem, expected));
  }

  /**
   * @throws Refusal 400 naming the first problem and listing all of them
   */
  void refuseIfAnyProblem() {
    if (problems.isEmpty()) {
      return;
    }
    Problem first = problems.get(0);
    String detail =
        "The field '"
            + first.field()
            + "' of '"
            + part
            + "' "
            + first.problem()
            + "; expected: "
            + first.expected()
            + ".";
    throw new Refusal(
            400, first.problem().equals(UNKNOWN) ? "unknown-field" : "invalid-field", detail)
        .with("part", part)
        .with("field", first.field())
        .with("expected", first.expected())
        .with("problems", List.copyOf(problems));
  }
}
