package evenpair.print;

import com.google.zxing.oned.Code128Writer;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Optional;

/**
 * A text as Code 128 (ISO/IEC 15417), with light margins of ten modules on either side, as that
 * standard asks (from memory).
 */
public final class BarCode implements Drawing {
  private static final int QUIET = 10;
  private static final double WIDEST_MM = 0.375;
  private static final double NARROWEST_MM = 0.169;
  private static final int MOST_CHARACTERS = 80;

  private final boolean[] bars;
  private final double moduleMm;

  private BarCode(boolean[] bars, double moduleMm) {
    this.bars = bars;
    this.moduleMm = moduleMm;
  }

  /**
   * @param roomMm width on paper, light margins included
   * @return empty if the text holds a character that the code has no sign for, or is too long for
   *     bars that a label printer can print
   */
  public static Optional<BarCode> of(String text, double roomMm) {
    boolean known = text.chars().allMatch(c -> c >= ' ' && c < 0x7F);
    if (!known || text.isEmpty() || text.length() > MOST_CHARACTERS) {
      return Optional.empty();
    }
    boolean[] bars = new Code128Writer().encode(text);
    double module = Dots.widest(bars.length + 2 * QUIET, roomMm, WIDEST_MM, NARROWEST_MM);
    return module == 0 ? Optional.empty() : Optional.of(new BarCode(bars, module));
  }

  /**
   * @return width of the narrowest bar, millimetres
   */
  double moduleMm() {
    return moduleMm;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    double module = moduleMm * Dots.POINTS_PER_MM;
    double x = room.getCenterX() - bars.length * module / 2;
    paper.setColor(Color.BLACK);
    int start = 0;
    while (start < bars.length) {
      int end = start;
      while (end < bars.length && bars[end] == bars[start]) {
        end++;
      }
      if (bars[start]) {
        paper.fill(
            new Rectangle2D.Double(
                x + start * module, room.getY(), (end - start) * module, room.getHeight()));
      }
      start = end;
    }
  }
}
