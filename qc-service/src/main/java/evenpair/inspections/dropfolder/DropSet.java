package evenpair.inspections.dropfolder;

import evenpair.web.Refusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Files that belong together: the captures of one seating, and the JSON that names them if there is
 * one.
 *
 * @param name what the set is called in done/ and refused/
 * @param sidecar the JSON's file name
 * @param files file names by the part that they stand for
 * @param inspection the JSON of the part {@code inspection}; empty for a set with a flaw
 * @param flaw why it can never be taken, if that is known before it is read
 */
record DropSet(
    String name,
    Optional<String> sidecar,
    Map<String, String> files,
    byte[] inspection,
    Optional<Refusal> flaw) {

  static DropSet flawed(String sidecar, Refusal flaw) {
    return new DropSet(
        FileNames.stem(sidecar), Optional.of(sidecar), Map.of(), new byte[0], Optional.of(flaw));
  }

  /** A capture of which nothing says what it is of. */
  static DropSet stray(String name) {
    return new DropSet(
        FileNames.stem(name),
        Optional.empty(),
        Map.of("left", name),
        new byte[0],
        Optional.empty());
  }

  /**
   * @return every file name, the JSON first
   */
  List<String> names() {
    List<String> names = new ArrayList<>();
    sidecar.ifPresent(names::add);
    names.addAll(files.values());
    return names;
  }

  /**
   * @return the parts that must be there before the set can be taken
   */
  List<String> wanted() {
    if (sidecar.isPresent()) {
      return List.copyOf(files.keySet());
    }
    return files.containsKey("both") ? List.of("both") : List.of("left", "right");
  }

  /**
   * @param part as a refusal names it, such as {@code left} or {@code inspection}
   * @return the file that stands for it; empty if none does
   */
  Optional<String> fileOf(Object part) {
    return "inspection".equals(part)
        ? sidecar
        : Optional.ofNullable(files.get(String.valueOf(part)));
  }
}
