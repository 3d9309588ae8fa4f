package evenpair.batches;

import evenpair.batches.BatchJson.Spread;
import evenpair.batches.BatchJson.Statistics;
import evenpair.print.Drawing;
import evenpair.print.PaperChart;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.Map;

/**
 * Where the batch lies: above, both channels' deviation from golden inside the window; below, left
 * − right inside the match limit. Of each the median, and the span of the middle 95 %.
 */
final class SpreadDrawing implements Drawing {
  private static final Color LEFT = new Color(0x1F5FBF);
  private static final Color RIGHT = new Color(0xC8421A);
  private static final Color DIFFERENCE = new Color(0x6B3FA0);
  private static final BasicStroke SOLID = new BasicStroke(1.2f);
  private static final BasicStroke DASHED = PaperChart.dashed(1.2f, 5f, 2.5f);
  private static final BasicStroke SPAN = new BasicStroke(0.5f);
  private static final BasicStroke SPAN_DASHED = PaperChart.dashed(0.5f, 3f, 2f);
  private static final double[] NUMBERED = {20, 50, 100, 200, 500, 1e3, 2e3, 5e3, 1e4, 2e4};

  private final Statistics statistics;
  private final Map<String, String> words;

  /**
   * @param words texts of the keys deviation, difference, left, right, window, limit, span
   */
  SpreadDrawing(Statistics statistics, Map<String, String> words) {
    this.statistics = statistics;
    this.words = words;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    double width = room.getWidth() - 36;
    double heights = room.getHeight() - 14 - 38 - 14;
    Rectangle2D upper =
        new Rectangle2D.Double(room.getX() + 30, room.getY() + 14, width, heights * 0.6);
    Rectangle2D lower =
        new Rectangle2D.Double(
            upper.getX(), upper.getMaxY() + 38, width, heights - upper.getHeight());
    deviations(paper, upper);
    differences(paper, lower);
  }

  private void deviations(Graphics2D paper, Rectangle2D frame) {
    double[] low = statistics.window().lowerDb();
    double[] high = statistics.window().upperDb();
    double reach =
        reach(low, high, of(statistics.left().deviation()), of(statistics.right().deviation()));
    PaperChart chart = chart(paper, frame, reach);
    chart.band(statistics.frequencyHz(), low, high);
    ground(chart, words.get("deviation"), reach);
    chart.line(PaperChart.QUIET, PaperChart.FINE, statistics.frequencyHz(), low);
    chart.line(PaperChart.QUIET, PaperChart.FINE, statistics.frequencyHz(), high);
    spread(chart, statistics.left().deviation().percentiles(), LEFT, SOLID, SPAN);
    spread(chart, statistics.right().deviation().percentiles(), RIGHT, DASHED, SPAN_DASHED);
    chart.border();
    regions(paper, chart);
    double x = frame.getX();
    double y = frame.getMaxY() + 20;
    x = chart.key(x, y, LEFT, SOLID, words.get("left"));
    x = chart.key(x, y, RIGHT, DASHED, words.get("right"));
    x = chart.key(x, y, PaperChart.QUIET, SPAN, words.get("span"));
    chart.key(x, y, PaperChart.QUIET, PaperChart.FINE, words.get("window"));
  }

  private void differences(Graphics2D paper, Rectangle2D frame) {
    double[] limit = statistics.matchLimitDb();
    double[] negative = Arrays.stream(limit).map(db -> -db).toArray();
    Map<String, double[]> percentiles = statistics.difference().percentiles();
    double reach = reach(negative, limit, percentiles.get("2.5"), percentiles.get("97.5"));
    PaperChart chart = chart(paper, frame, reach);
    chart.band(statistics.frequencyHz(), negative, limit);
    ground(chart, words.get("difference"), reach);
    chart.line(PaperChart.QUIET, PaperChart.FINE, statistics.frequencyHz(), negative);
    chart.line(PaperChart.QUIET, PaperChart.FINE, statistics.frequencyHz(), limit);
    spread(chart, percentiles, DIFFERENCE, SOLID, SPAN);
    chart.border();
  }

  private PaperChart chart(Graphics2D paper, Rectangle2D frame, double reach) {
    return new PaperChart(paper, frame, PaperChart.frequencies(frame), -reach, reach);
  }

  private void ground(PaperChart chart, String title, double reach) {
    chart.levels(title, Math.max(1, PaperChart.step(2 * reach, 6)), "%+.0f");
    for (double hz : NUMBERED) {
      double x = chart.x(hz);
      chart.draw(
          new Color(0xD5D8DA),
          PaperChart.FINE,
          new Line2D.Double(x, chart.frame().getY(), x, chart.frame().getMaxY()));
    }
  }

  private void regions(Graphics2D paper, PaperChart chart) {
    paper.setColor(PaperChart.QUIET);
    double y = chart.frame().getMaxY() + 9;
    for (double hz : NUMBERED) {
      String text = hz < 1000 ? "%.0f".formatted(hz) : "%.0fk".formatted(hz / 1000);
      PaperChart.TYPE.writeCentred(paper, text, chart.x(hz), y);
    }
    statistics
        .regions()
        .forEach(
            region -> {
              double from = chart.x(Math.max(20, region.fromHz()));
              double to = chart.x(Math.min(20_000, region.toHz()));
              if (PaperChart.TYPE.width(region.name()) < to - from - 2) {
                PaperChart.TYPE.writeCentred(
                    paper, region.name(), (from + to) / 2, chart.frame().getY() + 8);
              }
            });
  }

  private void spread(
      PaperChart chart,
      Map<String, double[]> percentiles,
      Color colour,
      BasicStroke median,
      BasicStroke span) {
    double[] hz = statistics.frequencyHz();
    chart.line(colour, span, hz, percentiles.get("2.5"));
    chart.line(colour, span, hz, percentiles.get("97.5"));
    chart.line(colour, median, hz, percentiles.get("50"));
  }

  private static double[] of(Spread spread) {
    double[] low = spread.percentiles().get("2.5");
    double[] high = spread.percentiles().get("97.5");
    double[] both = Arrays.copyOf(low, low.length + high.length);
    System.arraycopy(high, 0, both, low.length, high.length);
    return both;
  }

  /** Whole dB that hold the limits and, of the curves, what is not more than twice as far out. */
  private static double reach(double[] low, double[] high, double[]... curves) {
    double limit = Math.max(furthest(low), furthest(high));
    double curve = 0;
    for (double[] values : curves) {
      curve = Math.max(curve, furthest(values));
    }
    double least = limit > 0 ? limit * 1.15 : 1;
    return Math.ceil(limit > 0 ? Math.max(least, Math.min(curve, 2 * limit)) : Math.max(1, curve));
  }

  private static double furthest(double[] values) {
    return Arrays.stream(values).filter(Double::isFinite).map(Math::abs).max().orElse(0);
  }
}
