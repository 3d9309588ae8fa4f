package evenpair.print;

/**
 * Makes sure that nothing on paper is an empty box: a character that no typeface here has is
 * written as its code point, such as {@code ‹U+5DE6›}. Honest and unambiguous for a serial number
 * in any script, though not pretty.
 */
final class Legible {
  private Legible() {}

  static String of(String text) {
    if (text.codePoints().allMatch(Legible::shown)) {
      return text;
    }
    StringBuilder legible = new StringBuilder();
    text.codePoints()
        .forEach(
            point -> {
              if (shown(point)) {
                legible.appendCodePoint(point);
              } else {
                legible.append(String.format("‹U+%04X›", point));
              }
            });
    return legible.toString();
  }

  private static boolean shown(int codePoint) {
    return codePoint == '\n' || PaperFonts.canShow(codePoint) && !Character.isISOControl(codePoint);
  }
}
