package evenpair.captures;

import java.util.Arrays;
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

  private final Pattern separator;
  private final boolean commaSeparates;
  private char decimal;

  private CurveDialect(String separator) {
    this.separator = Pattern.compile(separator);
    commaSeparates = separator.indexOf(',') >= 0;
    decimal = commaSeparates ? '.' : 0;
  }

  static CurveDialect of(String row) {
    if (row.indexOf('\t') >= 0) {
      return new CurveDialect("\\s*\\t\\s*");
    }
    if (row.indexOf(';') >= 0) {
      return new CurveDialect("\\s*;\\s*");
    }
    String[] words = row.split("\\s+");
    boolean spaces =
        words.length > 1
            && Arrays.stream(words).noneMatch(w -> w.startsWith(",") || w.endsWith(","));
    return new CurveDialect(spaces || row.indexOf(',') < 0 ? "\\s+" : "\\s*,\\s*");
  }

  /**
   * @return the cells of a row; one empty cell after a trailing separator is dropped
   */
  String[] split(String row) {
    String[] cells = separator.split(row, -1);
    boolean trailing = cells.length > 1 && cells[cells.length - 1].isEmpty();
    return trailing ? Arrays.copyOf(cells, cells.length - 1) : cells;
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
