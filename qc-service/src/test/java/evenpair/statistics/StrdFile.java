package evenpair.statistics;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/**
 * Reads the copies of NIST's datasets; their sources are named in {@code SOURCE.md} beside them.
 */
final class StrdFile {
  private static final int HEADER_LINES = 60;

  private StrdFile() {}

  /**
   * One number a line, after 60 lines of header or after comment and {@code name = value} lines.
   */
  static double[] univariate(String name) {
    List<String> lines = lines(name + ".txt");
    boolean commented = lines.get(0).startsWith("#");
    return lines.stream()
        .skip(commented ? 0 : HEADER_LINES)
        .map(String::trim)
        .filter(line -> !line.isEmpty() && !line.startsWith("#") && !line.contains("="))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  /** One group label (1 upwards) and one value a line, after 60 lines of header. */
  static double[][] groups(String name) {
    List<String[]> rows =
        lines(name + ".dat").stream()
            .skip(HEADER_LINES)
            .map(line -> line.trim().split("\\s+"))
            .filter(parts -> parts.length == 2)
            .toList();
    int groups = rows.stream().mapToInt(row -> Integer.parseInt(row[0])).max().orElseThrow();
    double[][] values = new double[groups][];
    for (int g = 1; g <= groups; g++) {
      String label = Integer.toString(g);
      values[g - 1] =
          rows.stream()
              .filter(row -> row[0].equals(label))
              .mapToDouble(row -> Double.parseDouble(row[1]))
              .toArray();
    }
    return values;
  }

  static float[] floats(double... values) {
    float[] narrow = new float[values.length];
    for (int i = 0; i < values.length; i++) {
      narrow[i] = (float) values[i];
    }
    return narrow;
  }

  private static List<String> lines(String file) {
    try (InputStream in = StrdFile.class.getResourceAsStream("/statistics/strd/" + file)) {
      return Arrays.asList(new String(in.readAllBytes(), StandardCharsets.US_ASCII).split("\\R"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
