package evenpair.captures;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Walks a curve file line by line, without ever holding more of it than its numbers. */
final class CurveText {
  private static final int MAX_ROWS = 200_000;
  private static final int MAX_LINE = 1000;
  private static final int MAX_PROBLEMS = 20;
  private static final double MAX_LEVEL_DB = 400;

  /** Beyond these no transducer is measured, and ratios of frequencies would overflow. */
  private static final double LEAST_HZ = 1e-6;

  private static final double GREATEST_HZ = 1e9;
  private static final String COMMENT = "#*;%\"'!";
  private static final String[] COLUMN = {"frequency in Hz", "level in dB", "phase in degrees"};

  private final byte[] file;
  private final List<String> problems = new ArrayList<>();
  private String firstPlace = "";
  private String firstExpected = "";
  private int position;
  private int line;
  private boolean headerSeen;
  private CurveDialect dialect;
  private int columns;
  private int rows;
  private double[][] values = new double[3][256];

  CurveText(byte[] file) {
    this.file = file;
  }

  /**
   * @throws UnreadableCapture naming every problem found, up to 20
   */
  CurveTable read() {
    checkKind();
    while (position < file.length && problems.size() < MAX_PROBLEMS) {
      String text = nextLine().strip();
      if (!text.isEmpty() && !isComment(text)) {
        row(text);
      }
    }
    if (rows < 2 && problems.isEmpty()) {
      throw new UnreadableCapture(
          "The curve file holds " + (rows == 0 ? "no row" : "one row") + " of numbers.",
          "end of file",
          "two rows at least: frequency in Hz, level in dB, optionally phase in degrees");
    }
    if (!problems.isEmpty()) {
      throw refusal();
    }
    Optional<double[]> phase =
        columns == 3 ? Optional.of(Arrays.copyOf(values[2], rows)) : Optional.empty();
    return new CurveTable(Arrays.copyOf(values[0], rows), Arrays.copyOf(values[1], rows), phase);
  }

  private void checkKind() {
    if (file.length == 0) {
      throw new UnreadableCapture(
          "The file is empty.", "", "a curve: frequency in Hz, level in dB");
    }
    boolean utf16 =
        file.length > 1 && (file[0] == -2 && file[1] == -1 || file[0] == -1 && file[1] == -2);
    if (utf16) {
      throw new UnreadableCapture(
          "The curve file is UTF-16 text.", "first 2 bytes", "UTF-8 or plain ASCII text");
    }
    for (int i = 0; i < Math.min(file.length, MAX_LINE); i++) {
      if (file[i] == 0) {
        throw new UnreadableCapture(
            "The curve file is not text.", "byte " + i, "UTF-8 or plain ASCII text");
      }
    }
    boolean mark =
        file.length > 2
            && file[0] == (byte) 0xEF
            && file[1] == (byte) 0xBB
            && file[2] == (byte) 0xBF;
    position = mark ? 3 : 0;
  }

  private String nextLine() {
    line++;
    int from = position;
    while (position < file.length && file[position] != '\n' && file[position] != '\r') {
      position++;
    }
    int length = position - from;
    if (position + 1 < file.length && file[position] == '\r' && file[position + 1] == '\n') {
      position++;
    }
    position++;
    if (length > MAX_LINE) {
      throw new UnreadableCapture(
          "Line " + line + " of the curve file is " + length + " bytes long.",
          "line " + line,
          "two or three numbers a line");
    }
    return new String(file, from, length, StandardCharsets.UTF_8);
  }

  private static boolean isComment(String text) {
    return COMMENT.indexOf(text.charAt(0)) >= 0 || text.startsWith("//");
  }

  private void row(String text) {
    if (dialect == null) {
      CurveDialect found = CurveDialect.of(text);
      boolean words = found.number(found.split(text)[0]).isEmpty();
      if (words && !headerSeen) {
        headerSeen = true;
        return;
      }
      dialect = found;
      columns = Math.max(2, Math.min(3, found.split(text).length));
    }
    String[] cells = dialect.split(text);
    if (cells.length != columns) {
      problem(
          cells.length > columns ? columns + 1 : cells.length,
          text,
          columns + " columns" + (rows == 0 ? "" : " as before"));
      return;
    }
    if (rows == MAX_ROWS) {
      throw new UnreadableCapture(
          "The curve file has more than " + MAX_ROWS + " rows; it was not read further.",
          "line " + line,
          "at most " + MAX_ROWS + " rows");
    }
    store(cells);
  }

  private void store(String[] cells) {
    double[] numbers = new double[columns];
    for (int c = 0; c < columns; c++) {
      Optional<Double> number = dialect.number(cells[c]);
      if (number.isEmpty()) {
        problem(c + 1, cells[c], COLUMN[c] + " as a number" + dialect.decimalHint());
        return;
      }
      numbers[c] = number.get();
    }
    if (!(numbers[0] >= LEAST_HZ && numbers[0] <= GREATEST_HZ)) {
      problem(1, cells[0], "a frequency above 0 Hz, from 0.000001 Hz to 1 GHz");
    } else if (rows > 0 && !(numbers[0] > values[0][rows - 1])) {
      problem(1, cells[0], "a frequency above the one before (" + values[0][rows - 1] + " Hz)");
    } else if (!(Math.abs(numbers[1]) <= MAX_LEVEL_DB)) {
      problem(2, cells[1], "a level between -400 and 400 dB");
    } else {
      keep(numbers);
    }
  }

  private void keep(double[] numbers) {
    for (int c = 0; c < columns; c++) {
      if (rows == values[c].length) {
        values[c] = Arrays.copyOf(values[c], 2 * rows);
      }
      values[c][rows] = numbers[c];
    }
    rows++;
  }

  private void problem(int column, String found, String expected) {
    String place = "line " + line + ", column " + column;
    if (problems.isEmpty()) {
      firstPlace = place;
      firstExpected = expected;
    }
    String shown = found.length() > 40 ? found.substring(0, 40) + "…" : found;
    problems.add(place + ": expected " + expected + ", found \"" + shown + "\"");
  }

  private UnreadableCapture refusal() {
    String rest = problems.size() == MAX_PROBLEMS ? "; it was not read further" : "";
    return new UnreadableCapture(
        "The curve file cannot be read: " + String.join("; ", problems) + rest + ".",
        firstPlace,
        firstExpected);
  }
}
