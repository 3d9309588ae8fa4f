package evenpair.web;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;

/** One text with its placeholders, parsed once. */
final class TextTemplate {
  private static final String MINUS = "\u2212";

  private enum Form {
    PLAIN,
    DB,
    SIGNED_DB,
    HERTZ,
    WORD,
    PERCENT
  }

  /** Either fixed text (form null) or a placeholder's name. */
  private record Piece(String text, Form form) {}

  private final List<Piece> pieces;

  private TextTemplate(List<Piece> pieces) {
    this.pieces = List.copyOf(pieces);
  }

  /**
   * @throws IllegalArgumentException if a brace has no partner or a placeholder's form is unknown
   */
  static TextTemplate parse(String template) {
    List<Piece> pieces = new ArrayList<>();
    int from = 0;
    for (int open = template.indexOf('{'); open >= 0; open = template.indexOf('{', from)) {
      int close = template.indexOf('}', open);
      if (close < 0 || template.indexOf('}', from) < open) {
        throw new IllegalArgumentException("a brace has no partner");
      }
      pieces.add(new Piece(template.substring(from, open), null));
      pieces.add(placeholder(template.substring(open + 1, close)));
      from = close + 1;
    }
    if (template.indexOf('}', from) >= 0) {
      throw new IllegalArgumentException("a brace has no partner");
    }
    pieces.add(new Piece(template.substring(from), null));
    return new TextTemplate(pieces);
  }

  private static Piece placeholder(String inside) {
    String[] parts = inside.split("\\|", 2);
    if (!parts[0].matches("[A-Za-z][A-Za-z0-9]*")) {
      throw new IllegalArgumentException("{" + inside + "} is no placeholder");
    }
    return new Piece(parts[0], form(parts.length == 1 ? "" : parts[1], inside));
  }

  private static Form form(String form, String inside) {
    return switch (form) {
      case "" -> Form.PLAIN;
      case "dB" -> Form.DB;
      case "+dB" -> Form.SIGNED_DB;
      case "Hz" -> Form.HERTZ;
      case "word" -> Form.WORD;
      case "%" -> Form.PERCENT;
      default ->
          throw new IllegalArgumentException(
              "{" + inside + "}: the form must be dB, +dB, Hz, % or word");
    };
  }

  /**
   * @param words gives the text under {@code word.<value>}
   */
  String render(Map<String, ?> values, Function<String, String> words) {
    StringBuilder text = new StringBuilder();
    for (Piece piece : pieces) {
      text.append(piece.form() == null ? piece.text() : filled(piece, values, words));
    }
    return text.toString();
  }

  private static String filled(Piece piece, Map<String, ?> values, Function<String, String> words) {
    Object value = values.get(piece.text());
    if (value == null) {
      throw new IllegalArgumentException("no value for {" + piece.text() + "}");
    }
    return switch (piece.form()) {
      case PLAIN -> value.toString();
      case WORD -> words.apply(key(value));
      case DB -> decibels(number(piece, value));
      case SIGNED_DB -> {
        String level = decibels(number(piece, value));
        yield level.startsWith(MINUS) || level.equals("0.0") ? level : "+" + level;
      }
      case HERTZ -> hertz(number(piece, value));
      case PERCENT ->
          BigDecimal.valueOf(number(piece, value))
              .setScale(2, RoundingMode.HALF_UP)
              .toPlainString();
    };
  }

  private static String key(Object value) {
    return value instanceof Enum<?> constant
        ? constant.name().toLowerCase(Locale.ROOT).replace('_', '-')
        : value.toString();
  }

  private static double number(Piece piece, Object value) {
    if (value instanceof Number number && Double.isFinite(number.doubleValue())) {
      return number.doubleValue();
    }
    throw new IllegalArgumentException(
        "{" + piece.text() + "} must be a finite number, was " + value);
  }

  /**
   * One decimal, halves away from zero, never "−0.0"; with the minus sign that screens and paper
   * print.
   */
  private static String decibels(double value) {
    BigDecimal rounded = BigDecimal.valueOf(value).setScale(1, RoundingMode.HALF_UP);
    String digits = rounded.abs().toPlainString();
    return rounded.signum() < 0 ? MINUS + digits : digits;
  }

  /**
   * Whole hertz below 1 kHz; kilohertz with three digits above, without closing zeros (neighbouring
   * grid points stay apart).
   */
  private static String hertz(double value) {
    BigDecimal whole = BigDecimal.valueOf(value).setScale(0, RoundingMode.HALF_UP);
    if (whole.abs().compareTo(BigDecimal.valueOf(1000)) < 0) {
      return whole.toPlainString() + " Hz";
    }
    BigDecimal kilo =
        BigDecimal.valueOf(value).movePointLeft(3).round(new MathContext(3, RoundingMode.HALF_UP));
    return kilo.stripTrailingZeros().toPlainString() + " kHz";
  }
}
