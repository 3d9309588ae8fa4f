package evenpair.captures;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How a curve file separates columns and writes decimals. Taken from the first row of numbers and
 * then kept: a comma separates only where neither tab, semicolon nor spaces do; the first decimal
 * mark met (point or comma) is the file's.
 */
final class CurveDialect {
  private static final Pattern NUMBER =
      Pattern.compile("[+-]?(\\d+([.,]\\d*)?|[.,]\\d+)([eE][+-]?\\d{1,3})?");

  private static final Pattern SPACES = Pattern.compile("\\s+");

  /** A tab, semicolon or comma; or a space, which stands for any number of them. */
  private final char separator;

  private char decimal;

  private CurveDialect(char separator) {
    this.separator = separator;
    decimal = separator == ',' ? '.' : 0;
  }

  static CurveDialect of(String row) {
    if (row.indexOf('\t') >= 0) {
      return new CurveDialect('\t');
    }
    if (row.indexOf(';') >= 0) {
      return new CurveDialect(';');
    }
    String[] words = SPACES.split(row);
    boolean spaces =
        words.length > 1
            && Arrays.stream(words).noneMatch(w -> w.startsWith(",") || w.endsWith(","));
    return new CurveDialect(spaces || row.indexOf(',') < 0 ? ' ' : ',');
  }

  /**
   * @return the cells of a row; one empty cell after a trailing separator is dropped
   */
  String[] split(String row) {
    String[] cells = separator == ' ' ? SPACES.split(row, -1) : splitAtEach(row);
    boolean trailing = cells.length > 1 && cells[cells.length - 1].isEmpty();
    return trailing ? Arrays.copyOf(cells, cells.length - 1) : cells;
  }

  /** By hand: a pattern with spaces on both sides takes the square of a row of spaces. */
  private String[] splitAtEach(String row) {
    List<String> cells = new ArrayList<>();
    int from = 0;
    for (int at = row.indexOf(separator); at >= 0; at = row.indexOf(separator, from)) {
      cells.add(row.substring(from, at).strip());
      from = at + 1;
    }
    cells.add(row.substring(from).strip());
    return cells.toArray(String[]::new);
  }

  /**
   * @return the cell's finite number, or nothing if it is none in this dialect
   */
  Optional<Double> number(String cell) {
    if (!NUMBER.matcher(cell).matches()) {
      return Optional.empty();
    }
    char mark = cell.indexOf(',') >= 0 ? ',' : cell.indexOf('.') >= 0 ? '.' : 0;
    if (mark != 0 && decimal == 0) {
      decimal = mark;
    }
    if (mark != 0 && mark != decimal) {
      return Optional.empty();
    }
    double value = Double.parseDouble(cell.replace(',', '.'));
    return Double.isFinite(value) ? Optional.of(value) : Optional.empty();
  }

  /**
   * @return what to add to an expectation about numbers, once the file's decimal mark is known
   */
  String decimalHint() {
    return decimal == 0 ? "" : decimal == ',' ? " with decimal comma" : " with decimal point";
  }
}
