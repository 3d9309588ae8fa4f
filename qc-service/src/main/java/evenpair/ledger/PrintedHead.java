package evenpair.ledger;

import evenpair.web.Refusal;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * A block's number and the first characters of its digest, as printed or written down: whoever
 * holds one can tell whether anything up to that block was removed since.
 *
 * @param digest at least 16 hex characters of the block's digest, lower case
 */
record PrintedHead(long block, String digest) {
  private static final Pattern FORM = Pattern.compile("(\\d{1,18}):([0-9a-f]{16,64})");
  private static final String EXPECTED =
      "a block's number, a colon, and 16 to 64 characters of its digest, such as 12:3f9a0c11d2e45b67";

  /**
   * @throws Refusal 400 if it has another form
   */
  static PrintedHead parse(String text) {
    Matcher parts = FORM.matcher(text.strip().toLowerCase(Locale.ROOT));
    if (!parts.matches()) {
      throw new Refusal(400, "invalid-head", "The head \"" + text + "\" is not " + EXPECTED + ".")
          .with("field", "head")
          .with("expected", EXPECTED);
    }
    return new PrintedHead(Long.parseLong(parts.group(1)), parts.group(2));
  }
}
