package evenpair.print;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import net.sf.jasperreports.engine.JasperReportsContext;
import net.sf.jasperreports.renderers.AbstractRenderer;
import net.sf.jasperreports.renderers.Graphics2DRenderable;

/** Lets the print engine draw a {@link Drawing}. */
final class DrawingRenderer extends AbstractRenderer implements Graphics2DRenderable {
  private static final long serialVersionUID = 1;

  private final transient Drawing drawing;

  DrawingRenderer(Drawing drawing) {
    this.drawing = drawing;
  }

  @Override
  public void render(JasperReportsContext context, Graphics2D paper, Rectangle2D room) {
    drawing.draw(paper, room);
  }
}
