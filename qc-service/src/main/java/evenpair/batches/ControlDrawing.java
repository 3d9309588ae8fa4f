package evenpair.batches;

import evenpair.batches.StatisticsJson.ChartPanel;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.print.Drawing;
import evenpair.print.PaperChart;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.stream.IntStream;

/** A control chart: its panels below each other, points that signal in a square. */
final class ControlDrawing implements Drawing {
  /** More points than this are drawn as a line alone. */
  private static final int MOST_DOTS = 150;

  private static final double MOST_REACH = 3;

  private final Charts charts;

  ControlDrawing(Charts charts) {
    this.charts = charts;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    int panels = charts.panels().size();
    double height = room.getHeight() / panels;
    for (int i = 0; i < panels; i++) {
      Rectangle2D frame =
          new Rectangle2D.Double(
              room.getX() + 34,
              room.getY() + i * height + 14,
              room.getWidth() - 40,
              height - 14 - (i == panels - 1 ? 12 : 2));
      panel(paper, frame, i);
    }
    paper.setColor(PaperChart.QUIET);
    double y = room.getMaxY() - 2;
    PaperChart.TYPE.write(paper, name(0), room.getX() + 34, y);
    PaperChart.TYPE.writeBefore(paper, name(charts.points().size() - 1), room.getMaxX() - 6, y);
  }

  private String name(int point) {
    return charts.points().get(point).units().get(0).serial();
  }

  private void panel(Graphics2D paper, Rectangle2D frame, int number) {
    ChartPanel panel = charts.panels().get(number);
    double[] ends = ends(panel);
    int count = charts.points().size();
    PaperChart chart =
        new PaperChart(
            paper,
            frame,
            at -> frame.getX() + (at + 0.5) / count * frame.getWidth(),
            ends[0],
            ends[1]);
    double step = PaperChart.step(ends[1] - ends[0], 4);
    chart.levels(
        number == 0 ? charts.name() + ". " + panel.title() : panel.title(),
        step,
        "%." + (int) Math.max(0, Math.ceil(-Math.log10(step))) + "f");
    double[] at = IntStream.range(0, count).asDoubleStream().toArray();
    chart.line(PaperChart.INK, PaperChart.FINE, at, same(panel.centre(), count));
    limit(chart, at, panel.lower());
    limit(chart, at, panel.upper());
    for (double[] line : panel.lines()) {
      chart.line(PaperChart.INK, PaperChart.LINE, at, line);
      if (count <= MOST_DOTS) {
        dots(chart, at, line);
      }
    }
    charts.signals().stream()
        .filter(signal -> signal.panel() == number)
        .flatMapToInt(signal -> Arrays.stream(signal.points()))
        .distinct()
        .forEach(point -> panel.lines().forEach(line -> square(chart, point, line)));
    chart.border();
  }

  private static void square(PaperChart chart, int point, double[] line) {
    if (!Double.isNaN(line[point])) {
      chart.mark(point, line[point], line.length <= MOST_DOTS ? 5 : 2.4);
    }
  }

  private static void dots(PaperChart chart, double[] at, double[] line) {
    for (int i = 0; i < line.length; i++) {
      if (!Double.isNaN(line[i])) {
        chart.dot(at[i], line[i]);
      }
    }
  }

  private static void limit(PaperChart chart, double[] at, double[] limit) {
    if (limit != null) {
      chart.line(PaperChart.INK, PaperChart.LIMIT, at, limit);
    }
  }

  private static double[] same(double value, int count) {
    double[] all = new double[count];
    Arrays.fill(all, value);
    return all;
  }

  /**
   * Holds every limit and line, with a little room; of what lies further than three times as far
   * from the centre as its limit, the place at the edge is enough.
   */
  private static double[] ends(ChartPanel panel) {
    double low = panel.centre();
    double high = panel.centre();
    for (double[] line : panel.lines()) {
      low = Math.min(low, least(line));
      high = Math.max(high, -least(Arrays.stream(line).map(v -> -v).toArray()));
    }
    if (panel.lower() != null) {
      low = Math.min(low, least(panel.lower()));
    }
    if (panel.upper() != null) {
      high = Math.max(high, -least(Arrays.stream(panel.upper()).map(v -> -v).toArray()));
    }
    if (panel.lower() != null) {
      low = Math.max(low, panel.centre() - MOST_REACH * (panel.centre() - least(panel.lower())));
    }
    if (panel.upper() != null) {
      double limit = -least(Arrays.stream(panel.upper()).map(v -> -v).toArray());
      high = Math.min(high, panel.centre() + MOST_REACH * (limit - panel.centre()));
    }
    double room = high > low ? (high - low) * 0.06 : 0.5;
    return new double[] {low - room, high + room};
  }

  private static double least(double[] values) {
    return Arrays.stream(values).filter(Double::isFinite).min().orElse(Double.POSITIVE_INFINITY);
  }
}
