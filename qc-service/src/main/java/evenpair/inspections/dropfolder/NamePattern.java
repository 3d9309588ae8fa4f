package evenpair.inspections.dropfolder;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Reads the fields of an inspection from a file's name, for rigs that write no JSON. */
final class NamePattern {
  /** Fields of an inspection that a name may carry, and which side it is. */
  static final List<String> GROUPS =
      List.of(
          "serial",
          "batch",
          "product",
          "tuning",
          "operator",
          "seating",
          "occasion",
          "stimulus",
          "leftEarpiece",
          "rightEarpiece",
          "side");

  private static final Pattern GROUP = Pattern.compile("\\(\\?<([a-zA-Z][a-zA-Z0-9]*)>");
  private static final Map<String, String> SIDES =
      Map.of("l", "left", "left", "left", "r", "right", "right", "right", "both", "both");

  private final Pattern pattern;
  private final List<String> groups;

  private NamePattern(Pattern pattern, List<String> groups) {
    this.pattern = pattern;
    this.groups = groups;
  }

  /**
   * @throws java.util.regex.PatternSyntaxException if it is no regular expression
   * @throws IllegalArgumentException if it has a named group that is no field, or none for the
   *     serial number
   */
  static NamePattern of(String expression) {
    Pattern pattern = Pattern.compile(expression);
    List<String> groups =
        GROUP.matcher(expression).results().map(found -> found.group(1)).distinct().toList();
    for (String group : groups) {
      if (!GROUPS.contains(group)) {
        throw new IllegalArgumentException(
            "evenpair.drop-folder.folders[].pattern has a group '"
                + group
                + "'; known: "
                + String.join(", ", GROUPS));
      }
    }
    if (!groups.contains("serial")) {
      throw new IllegalArgumentException(
          "evenpair.drop-folder.folders[].pattern needs a group (?<serial>…), was " + expression);
    }
    return new NamePattern(pattern, groups);
  }

  /**
   * What a name says.
   *
   * @param part {@code left}, {@code right}, or {@code both} if the name tells no side
   * @param fields of the inspection
   */
  record Named(String part, Map<String, String> fields) {}

  /**
   * @return empty if the name does not fit
   */
  Optional<Named> read(String name) {
    Matcher matcher = pattern.matcher(name);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    Map<String, String> fields = new LinkedHashMap<>();
    for (String group : groups) {
      if (matcher.group(group) != null && !group.equals("side")) {
        fields.put(group, matcher.group(group));
      }
    }
    return part(matcher).map(part -> new Named(part, fields));
  }

  private Optional<String> part(Matcher matcher) {
    if (!groups.contains("side") || matcher.group("side") == null) {
      return Optional.of("both");
    }
    return Optional.ofNullable(SIDES.get(matcher.group("side").toLowerCase(Locale.ROOT)));
  }
}
