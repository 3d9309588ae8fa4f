package evenpair.web;

import java.util.Locale;
import java.util.Map;

/**
 * The one table of texts a language: reasons, problems, screens and paper are all rendered from it.
 */
public interface Texts {
  /**
   * Renders a text. Placeholders: {@code {name}} as is; {@code {name|dB}} one decimal; {@code
   * {name|+dB}} one decimal with sign; {@code {name|Hz}} as 85 Hz or 8.5 kHz; {@code {name|%}} two
   * decimals; {@code {name|word}} the text under {@code word.<value>}.
   *
   * @param locale the reader's language; English where there is no table for it
   * @param key such as {@code reason.window.above}
   * @param values by placeholder name
   * @throws IllegalArgumentException if the key or a placeholder's value is missing: a text is
   *     never silently incomplete
   */
  String render(Locale locale, String key, Map<String, ?> values);

  /**
   * @return the whole table of a language, key to template, for the screens
   */
  Map<String, String> table(Locale locale);
}
