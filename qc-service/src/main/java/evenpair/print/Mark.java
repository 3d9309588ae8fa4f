package evenpair.print;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;

/** Shapes that go with a verdict's word, so that neither colour nor language alone carries it. */
public enum Mark implements Drawing {
  /** A filled disc with a tick, deep teal. */
  PASS(new Color(0x0B5D5A)),
  /** The same in black: label printers know no other colour. */
  PASS_BLACK(Color.BLACK),
  /** A filled square with a cross, black. */
  FAIL_BLACK(Color.BLACK);

  private final Color colour;

  Mark(Color colour) {
    this.colour = colour;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    double size = Math.min(room.getWidth(), room.getHeight());
    double x = room.getCenterX() - size / 2;
    double y = room.getCenterY() - size / 2;
    paper.setColor(colour);
    if (this == FAIL_BLACK) {
      paper.fill(new Rectangle2D.Double(x, y, size, size));
      line(paper, size, cross(x, y, size));
    } else {
      paper.fill(new Ellipse2D.Double(x, y, size, size));
      line(paper, size, tick(x, y, size));
    }
  }

  private static void line(Graphics2D paper, double size, Path2D path) {
    paper.setColor(Color.WHITE);
    paper.setStroke(
        new BasicStroke((float) (0.1 * size), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    paper.draw(path);
  }

  private static Path2D tick(double x, double y, double size) {
    Path2D tick = new Path2D.Double();
    tick.moveTo(x + 0.27 * size, y + 0.53 * size);
    tick.lineTo(x + 0.44 * size, y + 0.69 * size);
    tick.lineTo(x + 0.74 * size, y + 0.34 * size);
    return tick;
  }

  private static Path2D cross(double x, double y, double size) {
    Path2D cross = new Path2D.Double();
    cross.moveTo(x + 0.26 * size, y + 0.26 * size);
    cross.lineTo(x + 0.74 * size, y + 0.74 * size);
    cross.moveTo(x + 0.74 * size, y + 0.26 * size);
    cross.lineTo(x + 0.26 * size, y + 0.74 * size);
    return cross;
  }
}
