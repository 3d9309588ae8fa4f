package evenpair.inspections;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;

/** Changes one value of one row by one byte or bit, and puts it back. */
final class StoredBytes {
  private final Connection connection;
  private final Random random;

  StoredBytes(Connection connection, Random random) {
    this.connection = connection;
    this.random = random;
  }

  private record Column(String name, String type) {}

  /**
   * @param row where it stands now (ctid)
   */
  record Change(String table, String column, String type, String row, String before, String after) {
    String where() {
      String shown = after.length() > 80 ? after.substring(0, 80) + "…" : after;
      return table + "." + column + " to " + shown;
    }
  }

  /**
   * @return empty if there is nothing to change there, or the table's constraints refuse the value
   */
  Optional<Change> changeOne(String table) throws SQLException {
    List<Column> columns = columns(table);
    Column column = columns.get(random.nextInt(columns.size()));
    String select =
        "select ctid::text, %s::text from %s where %1$s is not null order by md5(ctid::text || %d) limit 1"
            .formatted(column.name(), table, random.nextInt(1000));
    try (Statement statement = connection.createStatement();
        ResultSet rows = statement.executeQuery(select)) {
      if (!rows.next()) {
        return Optional.empty();
      }
      String before = rows.getString(2);
      Optional<String> after = mutated(column.type(), before);
      return after.isEmpty()
          ? Optional.empty()
          : write(table, column, rows.getString(1), before, after.get());
    }
  }

  private Optional<Change> write(
      String table, Column column, String row, String before, String after) throws SQLException {
    try {
      String now = set(table, column.name(), column.type(), row, after);
      return Optional.of(new Change(table, column.name(), column.type(), now, before, after));
    } catch (SQLException e) {
      if (e.getSQLState().startsWith("23") || e.getSQLState().startsWith("22")) {
        return Optional.empty(); // a constraint, or text that is none of that type
      }
      throw e;
    }
  }

  void undo(Change change) throws SQLException {
    set(change.table(), change.column(), change.type(), change.row(), change.before());
  }

  private String set(String table, String column, String type, String row, String value)
      throws SQLException {
    String update =
        "update %s set %s = cast(? as %s) where ctid = cast(? as tid) returning ctid::text"
            .formatted(table, column, type);
    try (PreparedStatement statement = connection.prepareStatement(update)) {
      statement.setString(1, value);
      statement.setString(2, row);
      try (ResultSet written = statement.executeQuery()) {
        written.next();
        return written.getString(1);
      }
    }
  }

  private List<Column> columns(String table) throws SQLException {
    List<Column> columns = new ArrayList<>();
    try (PreparedStatement statement =
        connection.prepareStatement(
            "select attname, format_type(atttypid, null) from pg_attribute"
                + " where attrelid = cast(? as regclass) and attnum > 0 and not attisdropped"
                + " order by attnum")) {
      statement.setString(1, table);
      try (ResultSet rows = statement.executeQuery()) {
        while (rows.next()) {
          columns.add(new Column(rows.getString(1), rows.getString(2)));
        }
      }
    }
    return columns;
  }

  private Optional<String> mutated(String type, String value) {
    return switch (type) {
      case "real[]" -> element(value);
      case "double precision" -> Optional.of(bit(Double.parseDouble(value)));
      case "boolean" -> Optional.of(value.startsWith("t") ? "false" : "true");
      case "integer", "bigint" -> Optional.of(Long.toString(Long.parseLong(value) ^ 1));
      default -> character(value);
    };
  }

  private String bit(double value) {
    return Double.toString(
        Double.longBitsToDouble(Double.doubleToLongBits(value) ^ 1L << random.nextInt(52)));
  }

  private Optional<String> element(String array) {
    String[] values = array.substring(1, array.length() - 1).split(",");
    int place = random.nextInt(values.length);
    float value = values[place].equals("NaN") ? Float.NaN : Float.parseFloat(values[place]);
    if (!Float.isFinite(value)) {
      return Optional.empty();
    }
    values[place] =
        Float.toString(Float.intBitsToFloat(Float.floatToIntBits(value) ^ 1 << random.nextInt(23)));
    return Optional.of("{" + String.join(",", values) + "}");
  }

  /** One letter for a letter, one digit for a digit: hex, instants and JSON mostly stay whole. */
  private Optional<String> character(String value) {
    if (value.isEmpty()) {
      return Optional.empty();
    }
    char[] letters = value.toCharArray();
    int place = random.nextInt(letters.length);
    char old = letters[place];
    if (!Character.isLetterOrDigit(old) || (place < 2 && value.startsWith("\\x"))) {
      return Optional.empty();
    }
    letters[place] = (char) (old ^ 1);
    return Optional.of(new String(letters));
  }
}
