package evenpair.print;

import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/**
 * One frame of a chart on paper with its two scales; black first, so that a copy without colours
 * can be read. Places are points, values are the caller's.
 */
public final class PaperChart {
  public static final PaperType TYPE = new PaperType(6.5);
  public static final Color INK = new Color(0x1A1A1A);
  public static final Color QUIET = new Color(0x5A5A5A);
  public static final Color BAND = new Color(0xE9EEEF);
  public static final BasicStroke FINE = new BasicStroke(0.35f);
  public static final BasicStroke LINE = new BasicStroke(1f);
  public static final BasicStroke LIMIT = dashed(0.7f, 4f, 2f);

  private static final Color GRID = new Color(0xD5D8DA);

  private final Graphics2D paper;
  private final Rectangle2D frame;
  private final DoubleUnaryOperator x;
  private final double low;
  private final double high;

  /**
   * @param x place of a value on the horizontal axis, points
   * @param low value at the frame's foot
   * @param high value at its top, above low
   */
  public PaperChart(
      Graphics2D paper, Rectangle2D frame, DoubleUnaryOperator x, double low, double high) {
    this.paper = paper;
    this.frame = frame;
    this.x = x;
    this.low = low;
    this.high = high;
  }

  public static BasicStroke dashed(float width, float... dash) {
    return new BasicStroke(width, BasicStroke.CAP_BUTT, BasicStroke.JOIN_ROUND, 1f, dash, 0f);
  }

  /**
   * @return place of a frequency (Hz) on a logarithmic axis of 20 Hz to 20 kHz
   */
  public static DoubleUnaryOperator frequencies(Rectangle2D frame) {
    return hz -> frame.getX() + Math.log10(hz / 20) / 3 * frame.getWidth();
  }

  public Rectangle2D frame() {
    return frame;
  }

  public double y(double value) {
    return frame.getMaxY() - (value - low) / (high - low) * frame.getHeight();
  }

  public double x(double value) {
    return x.applyAsDouble(value);
  }

  /** Fine lines with their numbers to the left, a title above. */
  public void levels(String title, double step, String form) {
    for (double value = step * Math.ceil(low / step - 1e-9);
        value <= high + step * 1e-6;
        value += step) {
      draw(GRID, FINE, new Line2D.Double(frame.getX(), y(value), frame.getMaxX(), y(value)));
      paper.setColor(QUIET);
      TYPE.writeBefore(paper, number(form, value), frame.getX() - 4, y(value) + 2.3);
    }
    paper.setColor(INK);
    TYPE.write(paper, title, frame.getX(), frame.getY() - 4);
  }

  private static String number(String form, double value) {
    if (Math.abs(value) < 1e-9) {
      return "0";
    }
    return String.format(Locale.ROOT, form, value).replace('-', '\u2212');
  }

  public void border() {
    draw(new Color(0x444444), new BasicStroke(0.6f), frame);
  }

  /** A line over the points that have a value. */
  public void line(Color colour, BasicStroke stroke, double[] at, double[] values) {
    draw(colour, stroke, path(at, values));
  }

  private Path2D path(double[] at, double[] values) {
    Path2D path = new Path2D.Double();
    boolean drawing = false;
    for (int i = 0; i < values.length; i++) {
      if (Double.isNaN(values[i])) {
        drawing = false;
      } else if (drawing) {
        path.lineTo(x(at[i]), held(values[i]));
      } else {
        path.moveTo(x(at[i]), held(values[i]));
        drawing = true;
      }
    }
    return path;
  }

  /** What leaves the frame runs along its edge. */
  private double held(double value) {
    return y(Math.max(low, Math.min(high, value)));
  }

  /** The ground between two lines, where both have a value. */
  public void band(double[] at, double[] lower, double[] upper) {
    paper.setColor(BAND);
    for (int i = 1; i < at.length; i++) {
      if (Double.isNaN(lower[i - 1] + upper[i - 1] + lower[i] + upper[i])) {
        continue;
      }
      Path2D part = new Path2D.Double();
      part.moveTo(x(at[i - 1]), held(upper[i - 1]));
      part.lineTo(x(at[i]), held(upper[i]));
      part.lineTo(x(at[i]), held(lower[i]));
      part.lineTo(x(at[i - 1]), held(lower[i - 1]));
      part.closePath();
      paper.fill(part);
    }
  }

  /**
   * A small square round a point: it is found without its colour.
   *
   * @param size points
   */
  public void mark(double at, double value, double size) {
    draw(
        INK,
        new BasicStroke(0.9f),
        new Rectangle2D.Double(x(at) - size / 2, held(value) - size / 2, size, size));
  }

  public void dot(double at, double value) {
    double size = 1.6;
    paper.setColor(INK);
    paper.fill(new Rectangle2D.Double(x(at) - size / 2, held(value) - size / 2, size, size));
  }

  public void draw(Color colour, BasicStroke stroke, Shape shape) {
    paper.setColor(colour);
    paper.setStroke(stroke);
    paper.draw(shape);
  }

  /** What a line is called, with a piece of it, in a row below or above the frame. */
  public double key(double x0, double y0, Color colour, BasicStroke stroke, String text) {
    draw(colour, stroke, new Line2D.Double(x0, y0 - 2.3, x0 + 16, y0 - 2.3));
    paper.setColor(INK);
    TYPE.write(paper, text, x0 + 19, y0);
    return x0 + 19 + TYPE.width(text) + 12;
  }

  /**
   * @return 1, 2 or 5 times a power of ten, so that about so many steps span the range
   */
  public static double step(double range, int about) {
    double raw = range / about;
    double power = Math.pow(10, Math.floor(Math.log10(raw)));
    double share = raw / power;
    return power * (share < 1.5 ? 1 : share < 3.5 ? 2 : share < 7.5 ? 5 : 10);
  }
}
