package evenpair.traceability;

import evenpair.web.Texts;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;

/** The dossier's texts, and numbers as it writes them. */
final class DossierWords {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm 'UTC'", Locale.ROOT).withZone(ZoneOffset.UTC);
  private static final String NONE = "–";

  private final Texts texts;
  private final Locale locale;

  DossierWords(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  Locale locale() {
    return locale;
  }

  Texts texts() {
    return texts;
  }

  /**
   * @param key below {@code dossier.}
   */
  String text(String key) {
    return texts.render(locale, "dossier." + key, Map.of());
  }

  String text(String key, Map<String, ?> values) {
    return texts.render(locale, "dossier." + key, values);
  }

  /**
   * @param key of any text
   */
  String any(String key) {
    return texts.render(locale, key, Map.of());
  }

  static String time(Instant at) {
    return at == null ? NONE : UTC.format(at);
  }

  static String db(Double value, int digits) {
    if (value == null) {
      return NONE;
    }
    String text = String.format(Locale.ROOT, "%+." + digits + "f", value);
    boolean zero = Double.parseDouble(text) == 0;
    return zero ? text.substring(1) : text.replace('-', '−');
  }

  static String plain(Double value, int digits) {
    return value == null ? NONE : String.format(Locale.ROOT, "%." + digits + "f", value);
  }

  static String span(double fromHz, double toHz) {
    return hertz(fromHz) + " … " + hertz(toHz);
  }

  private static String hertz(double hz) {
    return hz < 1000
        ? String.format(Locale.ROOT, "%.0f Hz", hz)
        : java.math.BigDecimal.valueOf(hz / 1000)
                .round(new java.math.MathContext(3))
                .stripTrailingZeros()
                .toPlainString()
            + " kHz";
  }
}
