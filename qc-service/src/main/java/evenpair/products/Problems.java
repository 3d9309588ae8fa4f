package evenpair.products;

import java.util.ArrayList;
import java.util.List;
import org.yaml.snakeyaml.error.Mark;

/** Collects what is wrong in one file, so that its author mends it once. */
final class Problems {
  /** A file that is wrong all over does not need a longer list. */
  private static final int MOST = 100;

  private static final int LONGEST_QUOTE = 60;

  private final String file;
  private final List<LimitsProblem> found = new ArrayList<>();

  Problems(String file) {
    this.file = file;
  }

  void add(int line, int column, String path, String what, String expected) {
    if (found.size() < MOST) {
      found.add(new LimitsProblem(file, line, column, path, what, expected));
    }
  }

  void add(Mark mark, String path, String what, String expected) {
    add(mark.getLine() + 1, mark.getColumn() + 1, path, what, expected);
  }

  boolean none() {
    return found.isEmpty();
  }

  List<LimitsProblem> all() {
    return List.copyOf(found);
  }

  /**
   * @throws UnreadableLimits with everything collected, if there is anything
   */
  void throwIfAny() throws UnreadableLimits {
    if (!found.isEmpty()) {
      throw new UnreadableLimits(found);
    }
  }

  /**
   * @return the text in quotes, cut if it is long
   */
  static String quoted(String text) {
    String cut = text.length() > LONGEST_QUOTE ? text.substring(0, LONGEST_QUOTE) + "…" : text;
    return '"' + cut + '"';
  }
}
