package evenpair.batches;

import evenpair.print.Drawing;
import evenpair.print.PaperChart;
import evenpair.print.PaperType;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** Two lines to sign on. */
final class SignatureDrawing implements Drawing {
  private static final PaperType TYPE = new PaperType(7);
  private static final double WIDTH = 220;

  private final String left;
  private final String right;
  private final String below;

  SignatureDrawing(String left, String right, String below) {
    this.left = left;
    this.right = right;
    this.below = below;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    line(paper, room.getX(), room.getMaxY() - 16, left);
    line(paper, room.getMaxX() - WIDTH, room.getMaxY() - 16, right);
  }

  private void line(Graphics2D paper, double x, double y, String role) {
    paper.setColor(PaperChart.INK);
    paper.setStroke(new BasicStroke(0.6f));
    paper.draw(new Line2D.Double(x, y, x + WIDTH, y));
    TYPE.write(paper, role, x, y - 40);
    paper.setColor(PaperChart.QUIET);
    TYPE.write(paper, below, x, y + 10);
  }
}
