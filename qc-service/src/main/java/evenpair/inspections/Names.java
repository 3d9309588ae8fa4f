package evenpair.inspections;

import java.text.Normalizer;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The rule for serial numbers, batches and earpiece numbers: 1–64 Unicode letters, digits and
 * {@code . _ -}, in NFC.
 */
final class Names {
  static final String RULE = "1 to 64 letters, digits and . _ -";
  static final int LONGEST = 64;

  private static final Pattern ALLOWED = Pattern.compile("[\\p{L}\\p{Nd}._-]+");

  private Names() {}

  /**
   * @return the name in NFC; empty if it breaks the rule. Counts code points, so that a rare letter
   *     counts once
   */
  static Optional<String> accept(String sent) {
    if (sent.length() > 4 * LONGEST) {
      return Optional.empty();
    }
    String name = Normalizer.normalize(sent, Normalizer.Form.NFC);
    boolean fits =
        name.codePointCount(0, name.length()) <= LONGEST && ALLOWED.matcher(name).matches();
    return fits ? Optional.of(name) : Optional.empty();
  }
}
