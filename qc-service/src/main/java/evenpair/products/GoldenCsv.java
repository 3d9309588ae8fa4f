package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.GoldenResponse;
import java.math.BigDecimal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A golden response as CSV: the header {@code frequency_hz,level_db[,phase_deg]}, then the 241 grid
 * points in order. The frequency may be the exact or the rounded one; lines that begin with # are
 * comments. Values are kept as the 32-bit floats that the record stores, so that file, record and
 * judging agree to the bit.
 */
final class GoldenCsv {
  private static final String HEADER = "frequency_hz,level_db";
  private static final String PHASE_HEADER = HEADER + ",phase_deg";
  private static final double LOUDEST_DB = 200;

  /**
   * An R80 number lies up to 1.28 % from its exact frequency; the next grid point lies 2.9 % away.
   */
  private static final double NEAR = 0.014;

  private final Problems problems;
  private final List<double[]> rows = new ArrayList<>();
  private boolean withPhase;
  private boolean headerSeen;

  private GoldenCsv(Problems problems) {
    this.problems = problems;
  }

  /**
   * @param file name for the problems
   * @throws UnreadableLimits with every problem found
   */
  static GoldenResponse read(String file, byte[] bytes) throws UnreadableLimits {
    Problems problems = new Problems(file);
    if (bytes.length > YamlText.LARGEST) {
      problems.add(1, 1, "", bytes.length + " bytes", "at most " + YamlText.LARGEST + " bytes");
      problems.throwIfAny();
    }
    GoldenCsv reader = new GoldenCsv(problems);
    String[] lines = decoded(bytes, problems).split("\r\n|\n|\r");
    for (int i = 0; i < lines.length && reader.rows.size() <= Grid.POINTS; i++) {
      reader.line(i + 1, lines[i].strip());
    }
    reader.requireWhole(lines.length);
    problems.throwIfAny();
    return reader.golden();
  }

  private static String decoded(byte[] bytes, Problems problems) throws UnreadableLimits {
    try {
      return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(bytes)).toString();
    } catch (CharacterCodingException e) {
      problems.add(1, 1, "", "bytes that are not UTF-8", "text in UTF-8");
      throw new UnreadableLimits(problems.all());
    }
  }

  private void line(int number, String line) {
    if (line.isEmpty() || line.startsWith("#")) {
      return;
    }
    if (headerSeen) {
      row(number, line);
    } else {
      header(number, line);
    }
  }

  private void header(int number, String line) {
    headerSeen = true;
    withPhase = line.equals(PHASE_HEADER);
    if (!withPhase && !line.equals(HEADER)) {
      problems.add(
          number, 1, "", Problems.quoted(line), "the header " + HEADER + " or " + PHASE_HEADER);
    }
  }

  private void row(int number, String line) {
    String[] cells = line.split(",", -1);
    int wanted = withPhase ? 3 : 2;
    double[] row = new double[wanted];
    if (cells.length != wanted) {
      problems.add(
          number, 1, "", cells.length + " values", wanted + " values with a comma between");
    } else {
      row[0] = value(number, "frequency_hz", cells[0], Range.above(0, 1e6));
      row[1] = value(number, "level_db", cells[1], Range.from(-LOUDEST_DB, LOUDEST_DB));
      if (withPhase) {
        row[2] = value(number, "phase_deg", cells[2], Range.from(-1e6, 1e6));
      }
      requirePlace(number, row[0]);
    }
    rows.add(row);
  }

  private double value(int number, String column, String cell, Range range) {
    try {
      double value = Double.parseDouble(cell.strip());
      if (range.holds(value)) {
        return value;
      }
    } catch (NumberFormatException e) {
      // told below, like a number out of its range
    }
    problems.add(number, 1, column, Problems.quoted(cell), range.words());
    return Double.NaN;
  }

  private void requirePlace(int number, double hz) {
    if (rows.size() < Grid.POINTS && Math.abs(hz / Grid.hz(rows.size()) - 1) > NEAR) {
      String expected = Decimal.text(Grid.label(rows.size()));
      problems.add(
          number,
          1,
          "frequency_hz",
          Decimal.text(hz) + " Hz",
          "grid point " + (rows.size() + 1) + ", " + expected + " Hz");
    }
  }

  private void requireWhole(int lines) {
    if (!headerSeen) {
      problems.add(1, 1, "", "no line", "the header " + HEADER + " or " + PHASE_HEADER);
    } else if (rows.size() != Grid.POINTS) {
      String found =
          rows.size() > Grid.POINTS ? "more than " + Grid.POINTS : String.valueOf(rows.size());
      problems.add(
          lines,
          1,
          "",
          found + " points",
          "the " + Grid.POINTS + " grid points from 20 Hz to 20 kHz");
    }
  }

  private GoldenResponse golden() {
    Curve level = Curve.ofFloats(column(1));
    return new GoldenResponse(
        level, withPhase ? Optional.of(RealArrays.widened(column(2))) : Optional.empty());
  }

  private float[] column(int column) {
    float[] values = new float[rows.size()];
    for (int i = 0; i < values.length; i++) {
      values[i] = (float) rows.get(i)[column];
    }
    return values;
  }

  /**
   * @return the canonical text: exact frequencies to 0.01 Hz, the shortest decimals of the stored
   *     floats, LF
   */
  static String write(GoldenResponse golden) {
    StringBuilder text =
        new StringBuilder(golden.phaseDeg().isPresent() ? PHASE_HEADER : HEADER).append('\n');
    for (int i = 0; i < Grid.POINTS; i++) {
      text.append(Decimal.text(Math.round(Grid.hz(i) * 100) / 100.0)).append(',');
      text.append(shortest(golden.level().at(i)));
      if (golden.phaseDeg().isPresent()) {
        text.append(',').append(shortest(golden.phaseDeg().get()[i]));
      }
      text.append('\n');
    }
    return text.toString();
  }

  private static String shortest(double value) {
    return value == 0
        ? "0"
        : new BigDecimal(Float.toString((float) value)).stripTrailingZeros().toPlainString();
  }
}
