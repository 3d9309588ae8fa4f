package evenpair.print;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import net.sf.jasperreports.engine.JasperReportsContext;
import net.sf.jasperreports.renderers.AbstractRenderer;
import net.sf.jasperreports.renderers.Graphics2DRenderable;

/** Draws a response plot into the room that the page gives it. */
final class PlotRenderer extends AbstractRenderer implements Graphics2DRenderable {
  private static final long serialVersionUID = 1;

  private final transient ResponsePlot plot;
  private final transient PlotLabels labels;

  PlotRenderer(ResponsePlot plot, PlotLabels labels) {
    this.plot = plot;
    this.labels = labels;
  }

  @Override
  public void render(JasperReportsContext context, Graphics2D paper, Rectangle2D room) {
    PlotLayout layout = new PlotLayout(plot, room);
    PlotAxes axes = new PlotAxes(plot, layout, labels, paper);
    PlotPainter painter = new PlotPainter(plot, layout, paper);
    painter.drawLevels(axes::levelGrid);
    painter.drawDifference(axes::differenceGrid);
    axes.around();
  }
}
