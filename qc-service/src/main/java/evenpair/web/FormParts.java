package evenpair.web;

import jakarta.servlet.ServletException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.io.InputStream;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The parts of a multipart request by name, in the order sent; none unknown, none empty. */
public final class FormParts {
  private final Map<String, List<byte[]>> byName = new LinkedHashMap<>();

  private FormParts() {}

  /**
   * @param known names that may appear
   * @throws Refusal 400 naming a part that is unknown or empty
   */
  public static FormParts of(HttpServletRequest request, List<String> known)
      throws IOException, ServletException {
    FormParts sent = new FormParts();
    for (Part part : request.getParts()) {
      String name = part.getName();
      if (!known.contains(name)) {
        throw refusal("unknown-part", name, "is not known", "one of " + String.join(", ", known));
      }
      if (part.getSize() == 0) {
        throw refusal("empty-part", name, "is empty (0 bytes)", "a file with content");
      }
      try (InputStream in = part.getInputStream()) {
        sent.byName.computeIfAbsent(name, key -> new ArrayList<>()).add(in.readAllBytes());
      }
    }
    return sent;
  }

  /**
   * @throws Refusal 400 if the part is missing or there twice
   */
  public byte[] one(String name, String expected) {
    List<byte[]> parts = all(name);
    if (parts.size() != 1) {
      throw parts.isEmpty()
          ? refusal("missing-part", name, "is missing", expected)
          : refusal(
              "repeated-part",
              name,
              "is there " + parts.size() + " times",
              "one part of that name");
    }
    return parts.get(0);
  }

  /**
   * @return the parts of that name in the order sent; none if there is none
   */
  public List<byte[]> all(String name) {
    return byName.getOrDefault(name, List.of());
  }

  private static Refusal refusal(String type, String part, String problem, String expected) {
    return new Refusal(
            400, type, "The part '" + part + "' " + problem + "; expected: " + expected + ".")
        .with("part", part)
        .with("expected", expected);
  }
}
