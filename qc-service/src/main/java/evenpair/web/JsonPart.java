package evenpair.web;

import jakarta.validation.Validator;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.springframework.stereotype.Component;

/**
 * Reads a part that holds JSON, and refuses what breaks its constraints: all of them together, as
 * for a request's body.
 */
@Component
public class JsonPart {
  private final StrictJson json;
  private final Validator validator;

  public JsonPart(StrictJson json, Validator validator) {
    this.json = json;
    this.validator = validator;
  }

  /**
   * @param part the part's name in a refusal
   * @throws Refusal 400 if it is not such an object or a field is missing or out of its range
   */
  public <T> T read(String part, byte[] bytes, Class<T> type) {
    T value = json.read(part, bytes, type);
    List<Problem> problems =
        validator.validate(value).stream()
            .map(
                violation ->
                    new Problem(violation.getPropertyPath().toString(), violation.getMessage()))
            .sorted(Comparator.comparing(Problem::field))
            .toList();
    if (!problems.isEmpty()) {
      String detail =
          problems.stream()
              .map(problem -> "\"" + problem.field() + "\" " + problem.detail())
              .collect(Collectors.joining("; "));
      throw new Refusal(400, "invalid-field", detail + ".")
          .with("part", part)
          .with("field", problems.get(0).field())
          .with("problems", problems);
    }
    return value;
  }

  /**
   * @param detail what the field must be
   */
  public record Problem(String field, String detail) {}
}
