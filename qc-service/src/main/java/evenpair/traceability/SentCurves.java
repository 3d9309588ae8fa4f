package evenpair.traceability;

import evenpair.acoustics.Curve;
import evenpair.captures.CurveReader;
import evenpair.captures.CurveReader.CurvePair;
import evenpair.captures.UnreadableCapture;
import evenpair.web.FormParts;
import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The curves of an outside report as sent: {@code left} and {@code right} once a seating, or {@code
 * both} (frequency, left, right) once a seating, or {@code average} of both channels.
 *
 * @param files every file with the part it came as, in the order of the parts
 */
record SentCurves(
    List<Curve> left, List<Curve> right, Optional<Curve> average, List<SentFile> files) {
  static final List<String> PARTS = List.of("report", "left", "right", "both", "average");

  private static final String EXPECTED =
      "\"left\" and \"right\", as many of one as of the other; or \"both\" with frequency, left and right a line; or \"average\"";

  record SentFile(String part, byte[] bytes) {}

  /**
   * @throws Refusal 400 if channels do not pair up, 422 for a file that cannot be read, naming
   *     part, place and what would be right
   */
  static SentCurves of(FormParts parts) {
    List<Curve> left = new ArrayList<>(read(parts, "left", file -> CurveReader.read(file).level()));
    List<Curve> right =
        new ArrayList<>(read(parts, "right", file -> CurveReader.read(file).level()));
    if (left.size() != right.size()) {
      throw refusal(
          left.size() < right.size() ? "left" : "right",
          "There are %d files for left and %d for right.".formatted(left.size(), right.size()));
    }
    for (CurvePair pair : read(parts, "both", CurveReader::readPair)) {
      left.add(pair.left());
      right.add(pair.right());
    }
    List<Curve> averages = read(parts, "average", file -> CurveReader.read(file).level());
    if (left.isEmpty() && averages.isEmpty()) {
      throw refusal("left", "There is no curve.");
    }
    List<SentFile> files = new ArrayList<>();
    PARTS.stream()
        .filter(part -> !part.equals("report"))
        .forEach(part -> parts.all(part).forEach(bytes -> files.add(new SentFile(part, bytes))));
    return new SentCurves(
        left,
        right,
        averages.isEmpty() ? Optional.empty() : Optional.of(Curve.mean(averages)),
        files);
  }

  private static <T> List<T> read(FormParts parts, String name, Function<byte[], T> reader) {
    return parts.all(name).stream()
        .map(
            file -> {
              try {
                return reader.apply(file);
              } catch (UnreadableCapture e) {
                throw new Refusal(
                        422,
                        "unreadable-capture",
                        "The part '" + name + "' cannot be read: " + e.getMessage())
                    .with("part", name)
                    .with("place", e.place())
                    .with("expected", e.expected());
              }
            })
        .toList();
  }

  private static Refusal refusal(String part, String problem) {
    return new Refusal(400, "missing-part", problem + " Expected: " + EXPECTED + ".")
        .with("part", part)
        .with("expected", EXPECTED);
  }
}
