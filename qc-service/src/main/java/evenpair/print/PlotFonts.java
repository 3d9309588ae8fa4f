package evenpair.print;

import java.awt.Font;
import java.awt.FontFormatException;
import java.io.IOException;
import java.io.InputStream;

/**
 * The typeface of everything on paper, as the fonts' own archive carries it: no font of the machine
 * is used.
 */
final class PlotFonts {
  private static final Font BASE = load();

  private PlotFonts() {}

  static Font sized(double points) {
    return BASE.deriveFont((float) points);
  }

  static boolean canShow(int codePoint) {
    return BASE.canDisplay(codePoint);
  }

  private static Font load() {
    try (InputStream in =
        PlotFonts.class.getResourceAsStream("/net/sf/jasperreports/fonts/dejavu/DejaVuSans.ttf")) {
      return Font.createFont(Font.TRUETYPE_FONT, in);
    } catch (IOException | FontFormatException e) {
      throw new IllegalStateException("the typeface DejaVu Sans is not in the archive of fonts", e);
    }
  }
}
