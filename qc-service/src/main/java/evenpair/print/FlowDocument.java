package evenpair.print;

import java.time.Instant;
import java.util.List;
import java.util.Locale;

/**
 * A document of as many pages as its sections need, black first, with "page n of m" at every foot.
 *
 * @param paper sheet size
 * @param locale language of the layout's own words
 * @param title the document's title, shown by readers
 * @param dated the document's date: that of what it tells of, so that the same facts print alike
 * @param headerLeft small print at every head, such as the maker
 * @param headerRight likewise, such as the batch
 * @param footer small print at every foot
 */
public record FlowDocument(
    PaperSize paper,
    Locale locale,
    String title,
    Instant dated,
    String headerLeft,
    String headerRight,
    String footer,
    List<Section> sections) {
  /** Width of everything in a section, points. */
  public static final double WIDTH = 500;

  public FlowDocument {
    sections = List.copyOf(sections);
  }

  /**
   * @param heading null for a section without one
   * @param newPage whether it begins on a page of its own
   */
  public record Section(String heading, boolean newPage, List<Block> blocks) {
    public Section {
      blocks = List.copyOf(blocks);
    }
  }

  /** What a section is made of, from top to bottom. */
  public sealed interface Block {}

  /** A paragraph. */
  public record Paragraph(String text) implements Block {}

  /** Small print: methods, captions, notes. */
  public record Note(String text) implements Block {}

  /**
   * A picture over the whole width.
   *
   * @param height points
   */
  public record Figure(Drawing drawing, FigureHeight height) implements Block {}

  /** How high a picture is. */
  public enum FigureHeight {
    LOW(70),
    MIDDLE(132),
    HIGH(210),
    TALL(300);

    private final int points;

    FigureHeight(int points) {
      this.points = points;
    }

    public int points() {
      return points;
    }
  }

  /**
   * A table; its head comes again on every page that it goes on on, long words go on on a next
   * line.
   *
   * @param rows a text for each column, null for none
   */
  public record Table(List<Column> columns, List<List<String>> rows) implements Block {
    public Table {
      columns = List.copyOf(columns);
      rows = List.copyOf(rows);
      for (List<String> row : rows) {
        if (row.size() != columns.size()) {
          throw new IllegalArgumentException(
              "a row of %d texts in a table of %d columns".formatted(row.size(), columns.size()));
        }
      }
    }
  }

  /**
   * @param share of the table's width; all shares are taken against their sum
   * @param number whether it stands at the right edge
   */
  public record Column(String head, double share, boolean number) {}
}
