package evenpair.print;

import java.awt.BasicStroke;
import java.awt.Color;

/**
 * Line styles of paper: told apart by dash and weight first, by colour second, so that a
 * black-and-white copy can be read.
 */
enum Pens {
  LEFT(new Color(0x1F5FBF), 1.3f),
  RIGHT(new Color(0xC8421A), 1.3f, 5f, 2.5f),
  GOLDEN(new Color(0x111111), 0.5f),
  DIFFERENCE(new Color(0x6B3FA0), 1.2f),
  WINDOW(new Color(0x6F8086), 0.4f),
  FRAME(new Color(0x444444), 0.6f),
  MAJOR(new Color(0xC4C8CA), 0.35f),
  MINOR(new Color(0xE2E5E6), 0.25f),
  ZERO(new Color(0x777777), 0.4f),
  REGION(new Color(0x777777), 0.4f, 1.2f, 1.8f),
  HATCH(new Color(0xC9CDCF), 0.35f);

  /** Ground of the window and of the span inside the match limit. */
  static final Color BAND = new Color(0xE9F0F1);

  /** Ground of a region that failed. */
  static final Color FAILED = new Color(0xF6E3EC);

  static final Color INK = new Color(0x333333);

  private final Color colour;
  private final BasicStroke stroke;

  Pens(Color colour, float width, float... dash) {
    this.colour = colour;
    this.stroke =
        new BasicStroke(
            width,
            BasicStroke.CAP_BUTT,
            BasicStroke.JOIN_ROUND,
            1f,
            dash.length == 0 ? null : dash,
            0f);
  }

  Color colour() {
    return colour;
  }

  BasicStroke stroke() {
    return stroke;
  }
}
