package evenpair.inspections.dropfolder;

import java.util.Locale;
import java.util.Set;

/** Which names are looked at. Everything else in the folder is left alone. */
final class FileNames {
  static final int LONGEST = 160;
  private static final String SEPARATORS = "/\\:*?\"<>|";
  private static final Set<String> CURVES = Set.of("csv", "txt");

  private FileNames() {}

  /**
   * @return true for a plain name of a kind that is taken: {@code .json}, {@code .wav}, {@code
   *     .csv} or {@code .txt}, not hidden, nothing in it that a file name has no use for
   */
  static boolean taken(String name) {
    return plain(name) && (sidecar(name) || capture(name));
  }

  /**
   * @return true if the name stays inside its folder and can be written in a report
   */
  static boolean plain(String name) {
    boolean fits = !name.isBlank() && name.length() <= LONGEST && name.equals(name.strip());
    return fits
        && !name.startsWith(".")
        && !name.startsWith("~")
        && name.chars().noneMatch(c -> SEPARATORS.indexOf(c) >= 0)
        && name.codePoints().noneMatch(FileNames::unprintable);
  }

  private static boolean unprintable(int point) {
    int type = Character.getType(point);
    return type == Character.CONTROL
        || type == Character.FORMAT
        || type == Character.SURROGATE
        || type == Character.LINE_SEPARATOR
        || type == Character.PARAGRAPH_SEPARATOR
        || type == Character.UNASSIGNED;
  }

  static boolean sidecar(String name) {
    return kind(name).equals("json");
  }

  static boolean capture(String name) {
    return kind(name).equals("wav") || curve(name);
  }

  static boolean curve(String name) {
    return CURVES.contains(kind(name));
  }

  /**
   * @return the name without its ending
   */
  static String stem(String name) {
    int dot = name.lastIndexOf('.');
    return dot > 0 ? name.substring(0, dot) : name;
  }

  private static String kind(String name) {
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }
}
