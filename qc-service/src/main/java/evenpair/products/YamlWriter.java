package evenpair.products;

import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Writes a tree as YAML, always by the same bytes: one line a key, and one line an element where a
 * key holds a list of mappings. What stands in limits/ and what is digested is this text.
 */
final class YamlWriter {
  /** Words that mean only themselves in YAML 1.1 and 1.2, inside flow collections too. */
  private static final Pattern PLAIN =
      Pattern.compile("[A-Za-z][A-Za-z0-9._/-]*( [A-Za-z0-9][A-Za-z0-9._/-]*)*|1/[0-9]+ octave");

  private static final Pattern RESERVED = Pattern.compile("(?i)y|n|yes|no|on|off|true|false|null");

  private YamlWriter() {}

  static String write(Map<String, Object> tree) {
    StringBuilder text = new StringBuilder();
    tree.forEach((key, value) -> text.append(key).append(':').append(block(value)).append('\n'));
    return text.toString();
  }

  private static String block(Object value) {
    if (value instanceof List<?> list && !list.isEmpty() && list.get(0) instanceof Map) {
      return list.stream().map(element -> "\n  - " + flow(element)).collect(Collectors.joining());
    }
    return " " + flow(value);
  }

  static String flow(Object value) {
    if (value instanceof Map<?, ?> map) {
      return map.entrySet().stream()
          .map(entry -> entry.getKey() + ": " + flow(entry.getValue()))
          .collect(Collectors.joining(", ", "{", "}"));
    }
    if (value instanceof List<?> list) {
      return list.stream().map(YamlWriter::flow).collect(Collectors.joining(", ", "[", "]"));
    }
    if (value instanceof Double number) {
      return Decimal.text(number);
    }
    return value instanceof String word ? scalar(word) : String.valueOf(value);
  }

  private static String scalar(String word) {
    boolean plain = PLAIN.matcher(word).matches() && !RESERVED.matcher(word).matches();
    return plain ? word : "'" + word.replace("'", "''") + "'";
  }
}
