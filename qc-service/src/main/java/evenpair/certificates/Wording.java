package evenpair.certificates;

import evenpair.print.PreferredFrequency;
import evenpair.web.Texts;
import java.time.Instant;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.Map;

/** Words and numbers of a certificate in one language. */
final class Wording {
  private static final DateTimeFormatter UTC =
      DateTimeFormatter.ofPattern("uuuu-MM-dd, HH:mm", Locale.ROOT).withZone(ZoneOffset.UTC);

  private static final char HYPHEN = '-';
  private static final char MINUS = '\u2212';

  private final Texts texts;
  private final Locale locale;

  Wording(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  Locale locale() {
    return locale;
  }

  String text(String key, Map<String, ?> values) {
    return texts.render(locale, "paper." + key, values);
  }

  String text(String key) {
    return text(key, Map.of());
  }

  /**
   * @return whether there is a text for the key
   */
  boolean knows(String key) {
    return texts.table(locale).containsKey("paper." + key);
  }

  /**
   * @return a deviation in dB, one decimal, with its sign
   */
  String signed(double db) {
    return text("number.signed", Map.of("value", db)).replace(HYPHEN, MINUS);
  }

  /**
   * @return a size in dB, one decimal, without sign
   */
  String plain(double db) {
    return text("number.plain", Map.of("value", db));
  }

  /**
   * @return a share in percent, two decimals
   */
  String percent(double percent) {
    return text("number.percent", Map.of("value", percent));
  }

  /**
   * @return a grid frequency by its preferred number, as reasons and screens write it: 85 Hz, 8.5
   *     kHz
   */
  String at(double hz) {
    return text("number.hz", Map.of("value", PreferredFrequency.of(hz)));
  }

  /**
   * @return the instant to the minute, UTC
   */
  static String date(Instant at) {
    return UTC.format(at);
  }
}
