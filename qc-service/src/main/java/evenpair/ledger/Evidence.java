package evenpair.ledger;

import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/**
 * What stands behind an entry and is sealed with it: rows of tables, every column of them, and
 * files of the capture store. The check reads them again.
 *
 * @param rows sets of rows
 * @param files SHA-256 of files, lower-case hex
 */
public record Evidence(List<Rows> rows, List<String> files) {
  public static final Evidence NONE = new Evidence(List.of(), List.of());

  private static final Pattern NAME = Pattern.compile("[a-z][a-z0-9_]{0,62}");
  private static final Pattern SHA256 = Pattern.compile("[0-9a-f]{64}");

  /**
   * @throws IllegalArgumentException if a file is named by anything but its SHA-256
   */
  public Evidence {
    rows = List.copyOf(rows);
    files = List.copyOf(files);
    for (String file : files) {
      if (!SHA256.matcher(file).matches()) {
        throw new IllegalArgumentException("not a SHA-256 in lower-case hex: " + file);
      }
    }
  }

  /**
   * All rows of a table whose column holds that value: one row by its key, or all that belong to
   * another row.
   *
   * @param table and
   * @param column names as in the migrations
   */
  public record Rows(String table, String column, UUID value) {
    /**
     * @throws IllegalArgumentException if a name is none: it goes into a statement
     */
    public Rows {
      if (!NAME.matcher(table).matches() || !NAME.matcher(column).matches()) {
        throw new IllegalArgumentException("not a table's column: " + table + "." + column);
      }
    }
  }

  /**
   * @return evidence of these rows only
   */
  public static Evidence ofRows(String table, String column, UUID value) {
    return NONE.andRows(table, column, value);
  }

  public Evidence andRows(String table, String column, UUID value) {
    List<Rows> more = new ArrayList<>(rows);
    more.add(new Rows(table, column, value));
    return new Evidence(more, files);
  }

  /**
   * @param sha256 of files in the capture store; null is passed over
   */
  public Evidence andFiles(String... sha256) {
    List<String> more = new ArrayList<>(files);
    Stream.of(sha256).filter(file -> file != null && !more.contains(file)).forEach(more::add);
    return new Evidence(rows, more);
  }
}
