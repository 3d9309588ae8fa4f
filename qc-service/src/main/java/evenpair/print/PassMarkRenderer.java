package evenpair.print;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Ellipse2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import net.sf.jasperreports.engine.JasperReportsContext;
import net.sf.jasperreports.renderers.AbstractRenderer;
import net.sf.jasperreports.renderers.Graphics2DRenderable;

/** PASS: a filled disc in deep teal with a white tick. */
final class PassMarkRenderer extends AbstractRenderer implements Graphics2DRenderable {
  private static final long serialVersionUID = 1;
  private static final Color TEAL = new Color(0x0B5D5A);

  @Override
  public void render(JasperReportsContext context, Graphics2D paper, Rectangle2D room) {
    double size = Math.min(room.getWidth(), room.getHeight());
    double x = room.getCenterX() - size / 2;
    double y = room.getCenterY() - size / 2;
    paper.setColor(TEAL);
    paper.fill(new Ellipse2D.Double(x, y, size, size));
    Path2D tick = new Path2D.Double();
    tick.moveTo(x + 0.27 * size, y + 0.53 * size);
    tick.lineTo(x + 0.44 * size, y + 0.69 * size);
    tick.lineTo(x + 0.74 * size, y + 0.34 * size);
    paper.setColor(Color.WHITE);
    paper.setStroke(
        new BasicStroke((float) (0.1 * size), BasicStroke.CAP_ROUND, BasicStroke.JOIN_ROUND));
    paper.draw(tick);
  }
}
