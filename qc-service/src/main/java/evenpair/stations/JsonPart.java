package evenpair.stations;

import evenpair.web.Refusal;
import jakarta.validation.ConstraintViolation;
import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.core.StreamReadFeature;
import tools.jackson.databind.DeserializationFeature;
import tools.jackson.databind.MapperFeature;
import tools.jackson.databind.exc.MismatchedInputException;
import tools.jackson.databind.exc.UnrecognizedPropertyException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads a JSON object strictly: an unknown or repeated field, a text where a number belongs and every broken constraint are
 * refused, naming the field. A constraint's message says what would be right.
 */
@Component
class JsonPart {
  private static final JsonMapper STRICT = JsonMapper.builder()
      .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
      .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES, DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
      .disable(MapperFeature.ALLOW_COERCION_OF_SCALARS)
      .build();

  private final Validator validator;

  JsonPart(Validator validator) {
    this.validator = validator;
  }

  /**
   * @param part what the object is called in a refusal
   * @throws Refusal 400 if it is not such an object or a field is out of its range
   */
  <T> T read(String part, byte[] json, Class<T> type) {
    T value = parse(part, json, type);
    List<Problem> problems = validator.validate(value).stream()
        .map(JsonPart::problem)
        .sorted(Comparator.comparing(Problem::field))
        .toList();
    if (!problems.isEmpty()) {
      throw refusal(part, problems.get(0)).with("problems", problems);
    }
    return value;
  }

  private static <T> T parse(String part, byte[] json, Class<T> type) {
    try {
      T value = STRICT.readValue(json, type);
      if (value == null) {
        throw new Refusal(400, "invalid-json", "The part '" + part + "' must be one JSON object.").with("part", part);
      }
      return value;
    } catch (UnrecognizedPropertyException e) {
      String known = e.getKnownPropertyIds().stream().map(Object::toString).sorted().collect(Collectors.joining(", "));
      throw refusal(part, new Problem(e.getPropertyName(), "is not a known field", "one of " + known));
    } catch (MismatchedInputException e) {
      throw mismatch(part, e);
    } catch (JacksonException e) {
      throw new Refusal(400, "invalid-json", "The part '" + part + "' is not valid JSON: " + e.getOriginalMessage())
          .with("part", part)
          .with("place", "line " + e.getLocation().getLineNr() + ", column " + e.getLocation().getColumnNr())
          .with("expected", "one JSON object in UTF-8");
    }
  }

  private static Refusal mismatch(String part, MismatchedInputException e) {
    if (e.getPath().isEmpty()) {
      return new Refusal(400, "invalid-json", "The part '" + part + "' must be one JSON object.").with("part", part);
    }
    String field = e.getPath().get(0).getPropertyName();
    boolean number = e.getTargetType() == Double.class || e.getTargetType() == Integer.class;
    return refusal(part, new Problem(field, "has the wrong type", number ? "a number" : "a text"));
  }

  private static Problem problem(ConstraintViolation<?> violation) {
    String problem = violation.getInvalidValue() == null ? "is missing" : "is not usable";
    return new Problem(violation.getPropertyPath().toString(), problem, violation.getMessage());
  }

  private static Refusal refusal(String part, Problem first) {
    String detail = "The field '" + first.field() + "' of '" + part + "' " + first.problem() + "; expected: " + first.expected();
    return new Refusal(400, "invalid-field", detail + ".")
        .with("part", part)
        .with("field", first.field())
        .with("expected", first.expected());
  }

  /** @param expected what would be right */
  record Problem(String field, String problem, String expected) {}
}
