package evenpair.inspections.dropfolder;

import evenpair.web.Refusal;
import java.time.Duration;

/** What can be wrong with a set before anybody reads its captures. */
final class Flaws {
  private Flaws() {}

  static Refusal tooLarge(String part, String name, long bytes, long most) {
    return new Refusal(
            413,
            "part-too-large",
            "The file '%s' has %d bytes; expected: at most %d bytes.".formatted(name, bytes, most))
        .with("part", part)
        .with("expected", "at most " + most + " bytes");
  }

  static Refusal noPlainFile(String part, String name) {
    return new Refusal(
            400,
            "no-plain-file",
            "'%s' is a link or a folder; expected: the file itself, in this folder."
                .formatted(name))
        .with("part", part)
        .with("expected", "the file itself, in this folder");
  }

  static Refusal missing(DropSet set, String part, Duration patience) {
    String minutes =
        patience.toMinutes() < 1 ? patience.toSeconds() + " s" : patience.toMinutes() + " min";
    String problem =
        set.fileOf(part)
            .map(name -> "The file '%s' (%s) is not there, or is empty".formatted(name, part))
            .orElse("The %s side is not there".formatted(part));
    return new Refusal(400, "missing-part", "%s; waited for it for %s.".formatted(problem, minutes))
        .with("part", part)
        .with("expected", "both sides in the folder within " + minutes + " of each other");
  }

  static Refusal stray(String name, boolean patterned) {
    String expected =
        patterned
            ? "a name of the folder's pattern, or a JSON beside it that names the file"
            : "a JSON beside it that names the file and says what it is of";
    return new Refusal(
            400,
            "stray-file",
            "Nothing says what '%s' is of; expected: %s.".formatted(name, expected))
        .with("part", "left")
        .with("expected", expected);
  }
}
