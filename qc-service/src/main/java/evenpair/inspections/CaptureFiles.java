package evenpair.inspections;

import evenpair.web.Refusal;
import java.util.List;

/** The files of an attempt by the names that the API gives them. */
final class CaptureFiles {
  private static final List<String> SIDES = List.of("left", "right", "idle-left", "idle-right");

  private CaptureFiles() {}

  /**
   * @param bytes its length; null if it is not on the record
   */
  record Kept(String sha256, Long bytes, boolean curve) {}

  /**
   * @throws Refusal 404 for another name, or an idle recording that was not sent
   */
  static Kept of(AttemptRow row, String side) {
    return switch (side) {
      case "left" -> capture(row.left());
      case "right" -> capture(row.right());
      case "idle-left" -> idle(row, side, row.idleLeftSha256());
      case "idle-right" -> idle(row, side, row.idleRightSha256());
      default ->
          throw new Refusal(404, "unknown-side", "There is no side '" + side + "'.")
              .with("choices", SIDES);
    };
  }

  private static Kept capture(AttemptRow.File file) {
    return new Kept(file.sha256(), file.bytes(), file.format() == SentChannel.Format.CURVE);
  }

  private static Kept idle(AttemptRow row, String side, String sha256) {
    if (sha256 == null) {
      throw new Refusal(
          404,
          "no-idle-recording",
          "Attempt " + row.number() + " came without the idle recording '" + side + "'.");
    }
    return new Kept(sha256, null, false);
  }
}
