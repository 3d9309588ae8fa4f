package evenpair.batches;

import evenpair.statistics.Finding.NotEnough;
import evenpair.web.Texts;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;

/** Sentences of the statistics panels. */
final class StatisticsWords {
  private static final char MINUS = '\u2212';

  private final Texts texts;
  private final Locale locale;

  StatisticsWords(Texts texts, Locale locale) {
    this.texts = texts;
    this.locale = locale;
  }

  String text(String key, Map<String, ?> values) {
    return texts.render(locale, "statistics." + key, values);
  }

  String text(String key) {
    return text(key, Map.of());
  }

  /**
   * @return such as "Left, mean of treble"
   */
  String name(Quantity quantity, String region, String channel) {
    Map<String, Object> values = new HashMap<>();
    values.put("region", region == null ? "" : region);
    values.put("channel", channel == null ? "left" : channel);
    return text("quantity." + quantity.word(), values);
  }

  /**
   * @return why nothing can be said, and what it takes
   */
  String lacking(NotEnough<?> lack) {
    return text(
        "lack." + lack.lack().name().toLowerCase(Locale.ROOT),
        Map.of("have", lack.have(), "need", lack.need()));
  }

  /**
   * @return two decimals and a sign, but for zero
   */
  static String signed(double db) {
    String text = String.format(Locale.ROOT, "%.2f", Math.abs(db));
    return text.equals("0.00") ? text : (db < 0 ? MINUS : '+') + text;
  }
}
