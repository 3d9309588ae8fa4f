package evenpair.products;

import java.util.Optional;
import java.util.regex.Pattern;
import java.util.regex.PatternSyntaxException;

/**
 * Tells regular expressions that could keep the line waiting. Java's matcher goes back over every
 * choice: a repeated group may take exponential time, and k open repetitions take time in the k-th
 * power of the serial's length (at most 64).
 */
final class SerialPatterns {
  /**
   * 64 characters to the fourth power, in any order, are under a million steps: a few milliseconds.
   */
  private static final int MOST_OPEN_REPETITIONS = 4;

  private static final Pattern REFERENCE_OR_QUOTE =
      Pattern.compile("(?<!\\\\)(?:\\\\\\\\)*\\\\[1-9kQ]");
  private static final Pattern ESCAPE = Pattern.compile("\\\\(?:[pPx]\\{[^}]*}|.)");
  private static final Pattern INNERMOST_CLASS = Pattern.compile("\\[[^\\[\\]]*]");
  private static final Pattern SPECIAL_GROUP = Pattern.compile("\\(\\?(?!:)");
  private static final Pattern REPEATED_GROUP = Pattern.compile("\\)[*+{]");
  private static final Pattern OPEN_REPETITION = Pattern.compile("[*+]|\\{\\d+,\\d*}");

  private SerialPatterns() {}

  /**
   * @return what would be right, if the pattern cannot be taken
   */
  static Optional<String> flaw(String pattern) {
    try {
      Pattern.compile(pattern);
    } catch (PatternSyntaxException e) {
      return Optional.of("a valid regular expression (" + e.getDescription() + ")");
    }
    String bare = withoutClasses(ESCAPE.matcher(pattern).replaceAll("x"));
    if (REFERENCE_OR_QUOTE.matcher(pattern).find() || SPECIAL_GROUP.matcher(bare).find()) {
      return Optional.of(
          "a regular expression without references, \\Q quotes, look-around, flags and named"
              + " groups");
    }
    if (REPEATED_GROUP.matcher(bare).find()) {
      return Optional.of("a regular expression without a repeated group");
    }
    return OPEN_REPETITION.matcher(bare).results().count() > MOST_OPEN_REPETITIONS
        ? Optional.of(
            "a regular expression with at most " + MOST_OPEN_REPETITIONS + " open repetitions")
        : Optional.empty();
  }

  private static String withoutClasses(String text) {
    String before = text;
    String after = INNERMOST_CLASS.matcher(before).replaceAll("x");
    while (!after.equals(before)) {
      before = after;
      after = INNERMOST_CLASS.matcher(before).replaceAll("x");
    }
    return after;
  }
}
