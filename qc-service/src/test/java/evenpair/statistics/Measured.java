package evenpair.statistics;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;

/** Reads the copies of published data; their sources are named in {@code SOURCE.md} beside them. */
final class Measured {
  private static final int HEADER_LINES = 25;

  private Measured() {}

  /** The last number of each line that holds numbers only, after 25 lines of header. */
  static double[] handbook(String name) {
    return lines("handbook/" + name + ".DAT").stream()
        .skip(HEADER_LINES)
        .map(String::trim)
        .filter(line -> line.matches("[-+0-9.eE\\s]+") && line.matches(".*[0-9].*"))
        .mapToDouble(line -> Double.parseDouble(line.split("\\s+")[line.split("\\s+").length - 1]))
        .toArray();
  }

  /** All 200 diameters in order, five a group. */
  static double[] pistonRings() {
    return lines("piston-rings/pistonrings.txt").stream()
        .skip(1)
        .map(String::trim)
        .filter(line -> !line.isEmpty())
        .mapToDouble(line -> Double.parseDouble(line.split("\\s+")[0]))
        .toArray();
  }

  private static List<String> lines(String file) {
    try (InputStream in = Measured.class.getResourceAsStream("/statistics/" + file)) {
      return Arrays.asList(new String(in.readAllBytes(), StandardCharsets.US_ASCII).split("\\R"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
