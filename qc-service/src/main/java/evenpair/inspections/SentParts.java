package evenpair.inspections;

import evenpair.inspections.dropfolder.Ingest;
import evenpair.web.Refusal;
import jakarta.servlet.http.Part;
import java.io.IOException;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** The parts of a request, each there once, none unknown, none empty. */
final class SentParts {
  private static final List<String> KNOWN =
      List.of("inspection", "left", "right", "both", "idleLeft", "idleRight");
  private static final String EITHER =
      "the parts 'left' and 'right', or one two-channel part 'both' with left first";

  private final byte[] inspection;
  private final Map<String, SentFile> files;

  private SentParts(byte[] inspection, Map<String, SentFile> files) {
    this.inspection = inspection;
    this.files = files;
  }

  /**
   * @param longestCurve most bytes of a curve file
   * @throws Refusal 400, 413 or 415 naming the part
   */
  static SentParts of(Collection<Part> parts, long longestCurve) throws IOException {
    byte[] inspection = null;
    Map<String, SentFile> files = new LinkedHashMap<>();
    for (Part part : parts) {
      requireKnownAndNotEmpty(part);
      boolean repeated =
          part.getName().equals("inspection")
              ? inspection != null
              : files.containsKey(part.getName());
      if (repeated) {
        throw refusal(400, "repeated-part", part.getName(), "is there twice", "each part once");
      }
      if (part.getName().equals("inspection")) {
        inspection = bytes(part, longestCurve);
      } else {
        boolean curve = isCurve(part);
        files.put(
            part.getName(),
            SentFile.of(part.getName(), curve, bytes(part, curve ? longestCurve : Long.MAX_VALUE)));
      }
    }
    if (inspection == null) {
      throw refusal(
          400,
          "missing-part",
          "inspection",
          "is missing",
          "a JSON object with serial, batch, product, …");
    }
    SentParts sent = new SentParts(inspection, files);
    sent.requireBothSides();
    return sent;
  }

  /**
   * Parts that came as files of a folder.
   *
   * @param longestCurve most bytes of a curve file
   * @throws Refusal 400 or 413 naming the part
   */
  static SentParts of(byte[] inspection, List<Ingest.Part> parts, long longestCurve) {
    Map<String, SentFile> files = new LinkedHashMap<>();
    for (Ingest.Part part : parts) {
      if (part.curve() && part.bytes().length > longestCurve) {
        throw tooLarge(part.name(), part.bytes().length, longestCurve);
      }
      files.put(part.name(), SentFile.of(part.name(), part.curve(), part.bytes()));
    }
    SentParts sent = new SentParts(inspection, files);
    sent.requireBothSides();
    return sent;
  }

  private static void requireKnownAndNotEmpty(Part part) {
    if (!KNOWN.contains(part.getName())) {
      throw refusal(
          400,
          "unknown-part",
          part.getName(),
          "is not known",
          "one of " + String.join(", ", KNOWN));
    }
    if (part.getSize() == 0) {
      throw refusal(400, "empty-part", part.getName(), "is empty (0 bytes)", "a file with content");
    }
  }

  private static byte[] bytes(Part part, long longest) throws IOException {
    if (part.getSize() > longest) {
      throw tooLarge(part.getName(), part.getSize(), longest);
    }
    try (var in = part.getInputStream()) {
      return in.readAllBytes();
    }
  }

  private static Refusal tooLarge(String part, long bytes, long longest) {
    return refusal(
        413, "part-too-large", part, "has " + bytes + " bytes", "at most " + longest + " bytes");
  }

  private static boolean isCurve(Part part) {
    String type = Optional.ofNullable(part.getContentType()).orElse("").toLowerCase(Locale.ROOT);
    String name =
        Optional.ofNullable(part.getSubmittedFileName()).orElse("").toLowerCase(Locale.ROOT);
    if (type.startsWith("audio/")) {
      return false;
    }
    if (type.startsWith("text/csv") || (type.startsWith("text/plain") && !name.endsWith(".wav"))) {
      return true;
    }
    if (name.endsWith(".wav")) {
      return false;
    }
    if (name.endsWith(".csv") || name.endsWith(".txt")) {
      return true;
    }
    throw refusal(
        415,
        "unsupported-part",
        part.getName(),
        "has the type '" + type + "'",
        "audio/wav for a recording, text/csv for a curve");
  }

  private void requireBothSides() {
    boolean both = files.containsKey("both");
    boolean left = files.containsKey("left");
    boolean right = files.containsKey("right");
    if (both && (left || right)) {
      throw refusal(400, "parts-contradict", "both", "stands beside 'left' or 'right'", EITHER);
    }
    if (!both && !(left && right)) {
      throw refusal(400, "missing-part", left ? "right" : "left", "is missing", EITHER);
    }
  }

  private static Refusal refusal(
      int status, String type, String part, String problem, String expected) {
    return new Refusal(
            status, type, "The part '" + part + "' " + problem + "; expected: " + expected + ".")
        .with("part", part)
        .with("expected", expected);
  }

  byte[] inspection() {
    return inspection;
  }

  Optional<SentFile> file(String part) {
    return Optional.ofNullable(files.get(part));
  }

  /**
   * @return every file part in the order sent
   */
  Collection<SentFile> files() {
    return files.values();
  }
}
