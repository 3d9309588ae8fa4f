package evenpair.web;

import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.json.JsonMapper;

/**
 * Reads JSON that came as a part of an upload, with the same strictness and the same problem
 * documents as a request body.
 */
@Component
public class StrictJson {
  private final JsonMapper json;

  StrictJson(JsonMapper json) {
    this.json = json;
  }

  /**
   * @param part the upload's part, named in the refusal
   * @param bytes UTF-8 JSON
   * @param type what it must hold; unknown fields are refused
   * @throws Refusal 400 naming part, field, place and what would be right
   */
  public <T> T read(String part, byte[] bytes, Class<T> type) {
    try {
      T value = json.readValue(bytes, type);
      if (value == null) {
        throw new Refusal(
                400, "invalid-field", "The part \"" + part + "\" must be a JSON object, not null.")
            .with("part", part);
      }
      return value;
    } catch (JacksonException e) {
      throw JsonProblems.of(e).with("part", part);
    }
  }
}
