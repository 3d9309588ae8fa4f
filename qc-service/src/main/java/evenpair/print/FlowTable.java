package evenpair.print;

import evenpair.print.FlowDocument.Column;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.geom.Line2D;
import java.util.ArrayList;
import java.util.List;

/** Sets the head and the rows of a table: each is a drawing as high as its longest cell needs. */
final class FlowTable {
  private static final double TYPE = 7.5;
  private static final double LINE = 9.5;
  private static final double ABOVE = 3.5;
  private static final double GAP = 6;
  private static final Color INK = new Color(0x1A1A1A);
  private static final Color QUIET = new Color(0x4A4A4A);
  private static final Color RULE = new Color(0xB5B5B5);

  private final List<Column> columns;
  private final double shares;
  private final PaperType type = new PaperType(TYPE);

  FlowTable(List<Column> columns) {
    this.columns = columns;
    this.shares = columns.stream().mapToDouble(Column::share).sum();
  }

  Line head() {
    return line(columns.stream().map(Column::head).toList(), QUIET, INK, 0.75f);
  }

  Line row(List<String> texts) {
    return line(texts, INK, RULE, 0.3f);
  }

  private Line line(List<String> texts, Color ink, Color rule, float weight) {
    List<List<String>> cells = new ArrayList<>();
    for (int i = 0; i < columns.size(); i++) {
      cells.add(wrapped(texts.get(i) == null ? "" : texts.get(i), width(i) - GAP));
    }
    int lines = cells.stream().mapToInt(List::size).max().orElse(1);
    Drawing drawing =
        (paper, room) -> {
          paper.setColor(ink);
          double x = room.getX();
          for (int i = 0; i < columns.size(); i++) {
            for (int line = 0; line < cells.get(i).size(); line++) {
              double y = room.getY() + ABOVE + TYPE + line * LINE;
              if (columns.get(i).number()) {
                type.writeBefore(paper, cells.get(i).get(line), x + width(i) - GAP, y);
              } else {
                type.write(paper, cells.get(i).get(line), x, y);
              }
            }
            x += width(i);
          }
          paper.setColor(rule);
          paper.setStroke(new BasicStroke(weight));
          double foot = room.getMaxY() - weight;
          paper.draw(new Line2D.Double(room.getX(), foot, room.getMaxX(), foot));
        };
    return new Line(drawing, lines);
  }

  private double width(int column) {
    return FlowDocument.WIDTH * columns.get(column).share() / shares;
  }

  /** Breaks between words; a word wider than its cell is broken where it has to be. */
  private List<String> wrapped(String text, double width) {
    List<String> lines = new ArrayList<>();
    StringBuilder line = new StringBuilder();
    for (String word : text.split(" ")) {
      String longer = line.isEmpty() ? word : line + " " + word;
      if (type.width(longer) <= width) {
        line.setLength(0);
        line.append(longer);
        continue;
      }
      if (!line.isEmpty()) {
        lines.add(line.toString());
      }
      line.setLength(0);
      line.append(broken(word, width, lines));
    }
    lines.add(line.toString());
    return lines;
  }

  private String broken(String word, double width, List<String> lines) {
    String rest = word;
    while (type.width(rest) > width && rest.codePointCount(0, rest.length()) > 1) {
      int end = rest.length();
      while (type.width(rest.substring(0, end)) > width && end > rest.offsetByCodePoints(0, 1)) {
        end = rest.offsetByCodePoints(end, -1);
      }
      lines.add(rest.substring(0, end));
      rest = rest.substring(end);
    }
    return rest;
  }

  /**
   * @param lines how many lines of type it is high
   */
  record Line(Drawing drawing, int lines) {}
}
