package evenpair.inspections;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Why a unit is inspected. Production judges a unit once in each tuning; the others may come any
 * number of times.
 */
enum Occasion {
  PRODUCTION,
  REWORK,
  AUDIT,
  RETURN;

  /**
   * @return the lower-case word that JSON carries
   */
  String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  static Optional<Occasion> named(String word) {
    return Arrays.stream(values()).filter(occasion -> occasion.word().equals(word)).findFirst();
  }

  static List<String> words() {
    return Arrays.stream(values()).map(Occasion::word).toList();
  }
}
