package evenpair.traceability;

import evenpair.web.Refusal;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * Serial numbers from CSV text: the column called {@code serial}, or the first column of a text
 * without such a title. Comma, semicolon or tab part the columns; quotes may stand around a value.
 */
final class SerialList {
  private static final String TITLE = "serial";

  private SerialList() {}

  /**
   * @throws Refusal 400 for bytes that are not UTF-8, and for a line without a serial
   */
  static List<String> read(byte[] csv) {
    List<String> serials = new ArrayList<>();
    int column = 0;
    int number = 0;
    boolean begun = false;
    for (String line : text(csv).split("\r\n|\n|\r", -1)) {
      number++;
      if (line.isBlank()) {
        continue;
      }
      List<String> fields = fields(line);
      int title = begun ? -1 : title(fields);
      begun = true;
      if (title >= 0) {
        column = title;
      } else {
        serials.add(serial(fields, column, number));
      }
    }
    return serials;
  }

  private static String text(byte[] csv) {
    try {
      String text = StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(csv)).toString();
      return text.startsWith("\uFEFF") ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new Refusal(400, "invalid-csv", "The list is not UTF-8 text.")
          .with("expected", "CSV in UTF-8 with one serial a line");
    }
  }

  private static int title(List<String> fields) {
    for (int i = 0; i < fields.size(); i++) {
      if (fields.get(i).toLowerCase(Locale.ROOT).equals(TITLE)) {
        return i;
      }
    }
    return -1;
  }

  private static String serial(List<String> fields, int column, int number) {
    if (column >= fields.size() || fields.get(column).isEmpty()) {
      throw new Refusal(400, "invalid-csv", "Line " + number + " has no serial.")
          .with("place", "line " + number)
          .with("expected", "a serial in column " + (column + 1));
    }
    return fields.get(column);
  }

  private static List<String> fields(String line) {
    List<String> fields = new ArrayList<>();
    for (String field : line.split("[,;\t]", -1)) {
      String plain = field.strip();
      boolean quoted = plain.length() > 1 && plain.startsWith("\"") && plain.endsWith("\"");
      fields.add(quoted ? plain.substring(1, plain.length() - 1).replace("\"\"", "\"") : plain);
    }
    return fields;
  }
}
