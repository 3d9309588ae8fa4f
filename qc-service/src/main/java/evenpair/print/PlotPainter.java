package evenpair.print;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Area;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.function.DoubleUnaryOperator;

/**
 * Draws the grounds and curves of one response plot; {@link PlotAxes} draws what stands around
 * them.
 */
final class PlotPainter {
  private static final double HATCH_STEP = 4.5;

  private final ResponsePlot plot;
  private final PlotLayout layout;
  private final Graphics2D paper;

  PlotPainter(ResponsePlot plot, PlotLayout layout, Graphics2D paper) {
    this.plot = plot;
    this.layout = layout;
    this.paper = paper;
  }

  void drawLevels(Runnable gridLines) {
    Shape before = ground(layout.upper(), gridLines, plot.lower(), plot.upper(), layout::yOfLevel);
    stroke(Pens.WINDOW, curve(plot.lower(), layout::yOfLevel));
    stroke(Pens.WINDOW, curve(plot.upper(), layout::yOfLevel));
    stroke(Pens.GOLDEN, curve(plot.golden(), layout::yOfLevel));
    stroke(Pens.LEFT, curve(plot.left(), layout::yOfLevel));
    stroke(Pens.RIGHT, curve(plot.right(), layout::yOfLevel));
    finish(before, layout.upper());
  }

  void drawDifference(Runnable gridLines) {
    double[] negative = negated(plot.matchLimit());
    Shape before =
        ground(layout.lower(), gridLines, negative, plot.matchLimit(), layout::yOfDifference);
    stroke(Pens.WINDOW, curve(negative, layout::yOfDifference));
    stroke(Pens.WINDOW, curve(plot.matchLimit(), layout::yOfDifference));
    stroke(Pens.DIFFERENCE, curve(plot.difference(), layout::yOfDifference));
    finish(before, layout.lower());
  }

  private Shape ground(
      Rectangle2D frame, Runnable gridLines, double[] low, double[] high, DoubleUnaryOperator y) {
    Shape before = paper.getClip();
    paper.clip(frame);
    plot.regions().stream()
        .filter(ResponsePlot.PlotRegion::failed)
        .forEach(
            region ->
                fill(
                    Pens.FAILED,
                    between(frame, layout.x(region.fromHz()), layout.x(region.toHz()))));
    fill(Pens.BAND, band(low, high, y));
    hatch(between(frame, frame.getX(), layout.x(plot.specifiedFromHz())));
    hatch(between(frame, layout.x(plot.specifiedToHz()), frame.getMaxX()));
    gridLines.run();
    return before;
  }

  private void finish(Shape before, Rectangle2D frame) {
    paper.setClip(before);
    stroke(Pens.FRAME, frame);
  }

  private static Rectangle2D between(Rectangle2D frame, double fromX, double toX) {
    return new Rectangle2D.Double(fromX, frame.getY(), Math.max(0, toX - fromX), frame.getHeight());
  }

  private void hatch(Rectangle2D span) {
    if (span.isEmpty()) {
      return;
    }
    Shape before = paper.getClip();
    paper.clip(span);
    for (double x = span.getX() - span.getHeight(); x < span.getMaxX(); x += HATCH_STEP) {
      stroke(Pens.HATCH, new Line2D.Double(x, span.getMaxY(), x + span.getHeight(), span.getY()));
    }
    paper.setClip(before);
  }

  /** One closed path for each run of points that have both edges. */
  private Shape band(double[] low, double[] high, DoubleUnaryOperator y) {
    Area band = new Area();
    int start = 0;
    while (start < low.length) {
      int end = start;
      while (end < low.length && !Double.isNaN(low[end]) && !Double.isNaN(high[end])) {
        end++;
      }
      if (end - start > 1) {
        band.add(new Area(outline(low, high, start, end, y)));
      }
      start = Math.max(end, start) + 1;
    }
    return band;
  }

  private Path2D outline(double[] low, double[] high, int start, int end, DoubleUnaryOperator y) {
    Path2D path = new Path2D.Double();
    path.moveTo(x(start), y.applyAsDouble(high[start]));
    for (int i = start + 1; i < end; i++) {
      path.lineTo(x(i), y.applyAsDouble(high[i]));
    }
    for (int i = end - 1; i >= start; i--) {
      path.lineTo(x(i), y.applyAsDouble(low[i]));
    }
    path.closePath();
    return path;
  }

  private Path2D curve(double[] db, DoubleUnaryOperator y) {
    Path2D path = new Path2D.Double();
    boolean drawing = false;
    for (int i = 0; i < db.length; i++) {
      if (Double.isNaN(db[i])) {
        drawing = false;
      } else if (drawing) {
        path.lineTo(x(i), y.applyAsDouble(db[i]));
      } else {
        path.moveTo(x(i), y.applyAsDouble(db[i]));
        drawing = true;
      }
    }
    return path;
  }

  private double x(int index) {
    return layout.x(plot.frequencyHz()[index]);
  }

  private static double[] negated(double[] values) {
    double[] result = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      result[i] = -values[i];
    }
    return result;
  }

  private void fill(Color colour, Shape shape) {
    paper.setColor(colour);
    paper.fill(shape);
  }

  private void stroke(Pens pen, Shape shape) {
    paper.setColor(pen.colour());
    paper.setStroke(pen.stroke());
    paper.draw(shape);
  }
}
