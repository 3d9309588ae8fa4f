package evenpair.print;

import java.awt.Graphics2D;
import java.awt.Shape;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.function.DoubleUnaryOperator;

/** Draws grid lines, numbers, region names and the labels at the lines' ends. */
final class PlotAxes {
  private static final double[] NUMBERED = {
    20, 50, 100, 200, 500, 1000, 2000, 5000, 10_000, 20_000
  };
  private static final double TYPE = 6.5;
  private static final double LABEL_GAP = 8.5;
  private static final double SAMPLE = 13;

  private final ResponsePlot plot;
  private final PlotLayout layout;
  private final PlotLabels labels;
  private final Graphics2D paper;
  private final PaperType type = new PaperType(TYPE);

  PlotAxes(ResponsePlot plot, PlotLayout layout, PlotLabels labels, Graphics2D paper) {
    this.plot = plot;
    this.layout = layout;
    this.labels = labels;
    this.paper = paper;
  }

  void levelGrid() {
    verticals(layout.upper());
    horizontals(layout.upper(), layout.levels(), 5, 10, layout::yOfLevel);
  }

  void differenceGrid() {
    verticals(layout.lower());
    horizontals(layout.lower(), layout.differences(), 1, differenceStep(), layout::yOfDifference);
    stroke(Pens.ZERO, horizontal(layout.lower(), layout.yOfDifference(0)));
  }

  void around() {
    numbers(layout.levels(), 10, layout::yOfLevel, false);
    numbers(layout.differences(), differenceStep(), layout::yOfDifference, true);
    frequencies();
    regions();
    axisTitles();
    endsOfLevels();
    endOfDifference();
  }

  private double differenceStep() {
    return layout.differences().span() > 12 ? 5 : 2;
  }

  private void verticals(Rectangle2D frame) {
    for (double decade = 10; decade < 20_000; decade *= 10) {
      for (int digit = 1; digit <= 9; digit++) {
        double hz = decade * digit;
        if (hz > PlotLayout.LOWEST_HZ && hz < 20_000) {
          boolean numbered = digit == 1 || digit == 2 || digit == 5;
          stroke(
              numbered ? Pens.MAJOR : Pens.MINOR,
              new Line2D.Double(layout.x(hz), frame.getY(), layout.x(hz), frame.getMaxY()));
        }
      }
    }
    for (ResponsePlot.PlotRegion region : plot.regions()) {
      regionEdge(frame, region.fromHz());
      regionEdge(frame, region.toHz());
    }
  }

  private void regionEdge(Rectangle2D frame, double hz) {
    double x = layout.x(hz);
    if (x > frame.getX() + 1 && x < frame.getMaxX() - 1) {
      stroke(Pens.REGION, new Line2D.Double(x, frame.getY(), x, frame.getMaxY()));
    }
  }

  private void horizontals(
      Rectangle2D frame, LevelRange range, double step, double major, DoubleUnaryOperator y) {
    for (double db = step * Math.ceil(range.low() / step); db <= range.high(); db += step) {
      stroke(db % major == 0 ? Pens.MAJOR : Pens.MINOR, horizontal(frame, y.applyAsDouble(db)));
    }
  }

  private static Line2D horizontal(Rectangle2D frame, double y) {
    return new Line2D.Double(frame.getX(), y, frame.getMaxX(), y);
  }

  private void numbers(LevelRange range, double step, DoubleUnaryOperator y, boolean signed) {
    for (double db = step * Math.ceil(range.low() / step); db <= range.high(); db += step) {
      String text =
          String.format(Locale.ROOT, signed && db != 0 ? "%+.0f" : "%.0f", db)
              .replace('-', '\u2212');
      write(text, layout.upper().getX() - 4 - width(text), y.applyAsDouble(db) + TYPE * 0.36);
    }
  }

  private void frequencies() {
    double y = layout.lower().getMaxY() + TYPE + 3;
    for (double hz : NUMBERED) {
      String text =
          hz < 1000
              ? String.format(Locale.ROOT, "%.0f", hz)
              : String.format(Locale.ROOT, "%.0fk", hz / 1000);
      write(text, layout.x(hz) - width(text) / 2, y);
    }
    write("Hz", layout.lower().getMaxX() + 14, y);
  }

  /** A name wider than its region is left out rather than cut: the table beside the plot has it. */
  private void regions() {
    for (ResponsePlot.PlotRegion region : plot.regions()) {
      double from = Math.max(layout.upper().getX(), layout.x(region.fromHz()));
      double to = Math.min(layout.upper().getMaxX(), layout.x(region.toHz()));
      if (width(region.name()) <= to - from - 2) {
        write(region.name(), (from + to - width(region.name())) / 2, layout.upper().getY() - 4);
      }
    }
  }

  private void axisTitles() {
    write(labels.levelAxis(), layout.upper().getX() - 26, layout.upper().getY() - 4);
    write(labels.differenceAxis(), layout.lower().getX() - 26, layout.lower().getY() - 4);
    write(
        labels.aspects().get(layout.aspect()),
        layout.upper().getMaxX() + 5,
        layout.upper().getY() - 4);
  }

  private void endsOfLevels() {
    List<End> ends = new ArrayList<>();
    ends.add(new End(labels.left(), Pens.LEFT, height(plot.left(), layout::yOfLevel)));
    ends.add(new End(labels.golden(), Pens.GOLDEN, height(plot.golden(), layout::yOfLevel)));
    ends.add(new End(labels.right(), Pens.RIGHT, height(plot.right(), layout::yOfLevel)));
    ends.add(new End(labels.window(), Pens.WINDOW, height(plot.upper(), layout::yOfLevel)));
    label(ends, layout.upper());
  }

  private void endOfDifference() {
    List<End> ends = new ArrayList<>();
    ends.add(
        new End(
            labels.difference(),
            Pens.DIFFERENCE,
            height(plot.difference(), layout::yOfDifference)));
    ends.add(
        new End(
            labels.matchLimit(), Pens.WINDOW, height(plot.matchLimit(), layout::yOfDifference)));
    label(ends, layout.lower());
  }

  private static double height(double[] curve, DoubleUnaryOperator y) {
    for (int i = curve.length - 1; i >= 0; i--) {
      if (!Double.isNaN(curve[i])) {
        return y.applyAsDouble(curve[i]);
      }
    }
    return y.applyAsDouble(0);
  }

  /**
   * Puts each label beside its line's end, inside the frame's height, none closer to the next than
   * a line of type.
   */
  private void label(List<End> ends, Rectangle2D frame) {
    ends.sort(Comparator.comparingDouble(End::y));
    double[] places = new double[ends.size()];
    double lowest = frame.getY() + 4;
    for (int i = 0; i < places.length; i++) {
      places[i] = Math.max(lowest, Math.min(frame.getMaxY() - 3, ends.get(i).y()));
      lowest = places[i] + LABEL_GAP;
    }
    double highest = frame.getMaxY() - 3;
    for (int i = places.length - 1; i >= 0; i--) {
      places[i] = Math.min(places[i], highest);
      highest = places[i] - LABEL_GAP;
      draw(ends.get(i), frame.getMaxX() + 5, places[i]);
    }
  }

  private void draw(End end, double x, double y) {
    stroke(end.pen(), new Line2D.Double(x, y, x + SAMPLE, y));
    write(end.text(), x + SAMPLE + 3, y + TYPE * 0.36);
  }

  private double width(String text) {
    return type.width(text);
  }

  private void write(String text, double x, double y) {
    paper.setColor(Pens.INK);
    type.write(paper, text, x, y);
  }

  private void stroke(Pens pen, Shape shape) {
    paper.setColor(pen.colour());
    paper.setStroke(pen.stroke());
    paper.draw(shape);
  }

  /** A line's end: what it is called, how it is drawn, how high it lies. */
  private record End(String text, Pens pen, double y) {}
}
