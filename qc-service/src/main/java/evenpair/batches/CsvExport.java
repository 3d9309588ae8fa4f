package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.ExportColumn.Kind;
import evenpair.inspections.InspectionStream.StreamedInspection;
import java.io.BufferedWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tools.jackson.databind.json.JsonMapper;

/**
 * Writes RFC 4180 text in UTF-8: one line of names, CRLF, quotes where a value needs them. A curve
 * takes one column a grid point, lists are JSON, an absent value is empty. Every float is written
 * with as many digits as it takes to read the same float again.
 */
final class CsvExport implements AutoCloseable {
  private static final JsonMapper JSON = JsonMapper.builder().build();

  private final BufferedWriter out;

  CsvExport(Path file) throws IOException {
    this.out = Files.newBufferedWriter(file, StandardCharsets.UTF_8);
    line(titles());
  }

  /**
   * @return {@code left_level_db} becomes {@code left_level_db_19_95hz}, …, {@code
   *     left_level_db_20000hz}
   */
  static List<String> titles() {
    List<String> titles = new ArrayList<>();
    for (ExportColumn column : ExportColumn.ALL) {
      if (column.kind() == Kind.CURVE) {
        for (int i = 0; i < Grid.POINTS; i++) {
          titles.add(column.name() + '_' + point(i) + "hz");
        }
      } else {
        titles.add(column.name());
      }
    }
    return titles;
  }

  /** The grid point's preferred number, its decimal point as an underscore. */
  static String point(int index) {
    String label = String.format(Locale.ROOT, "%.2f", Grid.label(index));
    return label.replaceAll("\\.?0+$", "").replace('.', '_');
  }

  void add(StreamedInspection row) {
    List<String> fields = new ArrayList<>();
    for (ExportColumn column : ExportColumn.ALL) {
      Object value = column.of(row);
      switch (column.kind()) {
        case CURVE -> curve((float[]) value, fields);
        case REASONS, REGIONS -> fields.add(value == null ? "" : JSON.writeValueAsString(value));
        default -> fields.add(value == null ? "" : value.toString());
      }
    }
    try {
      line(fields);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static void curve(float[] levels, List<String> fields) {
    for (int i = 0; i < Grid.POINTS; i++) {
      boolean there = levels != null && !Float.isNaN(levels[i]);
      fields.add(there ? Float.toString(levels[i]) : "");
    }
  }

  private void line(List<String> fields) throws IOException {
    for (int i = 0; i < fields.size(); i++) {
      if (i > 0) {
        out.write(',');
      }
      out.write(quoted(fields.get(i)));
    }
    out.write("\r\n");
  }

  private static String quoted(String text) {
    return text.chars().anyMatch(c -> c == ',' || c == '"' || c == '\r' || c == '\n')
        ? '"' + text.replace("\"", "\"\"") + '"'
        : text;
  }

  @Override
  public void close() throws IOException {
    out.close();
  }
}
