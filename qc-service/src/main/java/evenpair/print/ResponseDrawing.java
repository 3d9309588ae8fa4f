package evenpair.print;

import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.function.Function;

/** A response plot as one of several drawings of a document. */
public final class ResponseDrawing implements Drawing {
  private final ResponsePlot plot;
  private final PlotLabels labels;

  /**
   * @param text renders the key below {@code paper.plot.}
   */
  public ResponseDrawing(ResponsePlot plot, Function<String, String> text) {
    this.plot = plot;
    this.labels = PlotLabels.from(text);
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    new PlotRenderer(plot, labels).render(null, paper, room);
  }
}
