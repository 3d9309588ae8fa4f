package evenpair.print;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;

/**
 * The typefaces of everything on paper, from files of this program: DejaVu Sans, and for what it
 * lacks (Chinese and Japanese; Korean is in neither) Droid Sans Fallback. No font of the machine is
 * used. Layouts name both together as the font set {@value #SET}.
 */
final class PaperFonts {
  static final String SET = "Evenpair Paper";

  private static final List<Font> FACES =
      List.of(
          load("/net/sf/jasperreports/fonts/dejavu/DejaVuSans.ttf"),
          load("/fonts/DroidSansFallbackFull.ttf"));

  private PaperFonts() {}

  /**
   * @return whether one of the typefaces has the character
   */
  static boolean canShow(int codePoint) {
    return FACES.stream().anyMatch(face -> face.canDisplay(codePoint));
  }

  /**
   * @return the first typeface that has the character; the first of all if none has
   */
  static Font faceFor(int codePoint) {
    return FACES.stream()
        .filter(face -> face.canDisplay(codePoint))
        .findFirst()
        .orElse(FACES.get(0));
  }

  private static Font load(String resource) {
    try (InputStream in = PaperFonts.class.getResourceAsStream(resource)) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException | FontFormatException e) {
      throw new IllegalStateException("the typeface " + resource + " is not where it belongs", e);
    }
  }
}
