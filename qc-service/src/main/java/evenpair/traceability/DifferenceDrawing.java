package evenpair.traceability;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.print.Drawing;
import evenpair.print.PaperChart;
import evenpair.tolerance.Region;
import evenpair.traceability.outside.RegionComparison;
import java.awt.BasicStroke;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Path2D;
import java.awt.geom.Rectangle2D;
import java.util.Map;
import java.util.function.Function;

/**
 * Left − right of both measurements over frequency, each with its band of expanded uncertainty, and
 * the match limit. Told apart in black: ours a full line, theirs dashed, the limit dotted.
 */
final class DifferenceDrawing implements Drawing {
  private static final Color OURS = new Color(0x5B2E91);
  private static final Color THEIRS = new Color(0x1A1A1A);
  private static final Color OUR_BAND = new Color(0x5B, 0x2E, 0x91, 46);
  private static final Color THEIR_BAND = new Color(0x1A, 0x1A, 0x1A, 20);
  private static final Color GRID = new Color(0xD5D8DA);
  private static final BasicStroke FULL = new BasicStroke(1.3f);
  private static final BasicStroke DASHED = PaperChart.dashed(1.2f, 5f, 3f);
  private static final BasicStroke DOTTED = PaperChart.dashed(0.7f, 1.2f, 2f);
  private static final double[] NUMBERED = {20, 50, 100, 200, 500, 1e3, 2e3, 5e3, 1e4, 2e4};
  private static final double LEAST_DB = 3;
  private static final double MOST_DB = 30;

  private final OutsideReport report;
  private final Map<String, String> words;

  /**
   * @param words texts of the keys axis, ours, theirs, limit, band
   */
  DifferenceDrawing(OutsideReport report, Map<String, String> words) {
    this.report = report;
    this.words = words;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    Rectangle2D frame =
        new Rectangle2D.Double(
            room.getX() + 30, room.getY() + 14, room.getWidth() - 36, room.getHeight() - 46);
    double[] ours = smoothed(report.ours().left()).minus(smoothed(report.ours().right())).toArray();
    double[] theirs =
        report.theirDifference().map(curve -> smoothed(curve).toArray()).orElse(new double[0]);
    double reach = reach(ours, theirs);
    PaperChart chart = new PaperChart(paper, frame, PaperChart.frequencies(frame), -reach, reach);
    ground(paper, chart, reach);
    band(paper, chart, theirs, RegionComparison::theirExpandedDb, THEIR_BAND, reach);
    band(paper, chart, ours, RegionComparison::ourExpandedDb, OUR_BAND, reach);
    double[] hz = Grid.frequencies();
    limits(chart, hz);
    if (theirs.length > 0) {
      chart.line(THEIRS, DASHED, hz, theirs);
    }
    chart.line(OURS, FULL, hz, ours);
    chart.border();
    keys(chart, frame, theirs.length > 0);
  }

  private Curve smoothed(Curve curve) {
    return report.ours().set().smoothing().apply(curve);
  }

  private void ground(Graphics2D paper, PaperChart chart, double reach) {
    chart.levels(words.get("axis"), PaperChart.step(2 * reach, 6), "%+.0f");
    for (double hz : NUMBERED) {
      double x = chart.x(hz);
      chart.draw(
          GRID,
          PaperChart.FINE,
          new Line2D.Double(x, chart.frame().getY(), x, chart.frame().getMaxY()));
      String text = hz < 1000 ? "%.0f".formatted(hz) : "%.0fk".formatted(hz / 1000);
      paper.setColor(PaperChart.QUIET);
      PaperChart.TYPE.writeCentred(paper, text, x, chart.frame().getMaxY() + 9);
    }
    for (Region region : report.ours().set().regions()) {
      double from = chart.x(Math.max(20, region.band().fromHz()));
      double to = chart.x(Math.min(20_000, region.band().toHz()));
      if (PaperChart.TYPE.width(region.name()) < to - from - 2) {
        PaperChart.TYPE.writeCentred(
            paper, region.name(), (from + to) / 2, chart.frame().getY() + 8);
      }
    }
  }

  private void limits(PaperChart chart, double[] hz) {
    for (Region region : report.ours().set().regions()) {
      double[] upper = absent();
      double[] lower = absent();
      for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
        if (region.match().isPresent()) {
          upper[i] = region.match().get().at(Grid.hz(i), region.band());
          lower[i] = -upper[i];
        }
      }
      chart.line(PaperChart.INK, DOTTED, hz, upper);
      chart.line(PaperChart.INK, DOTTED, hz, lower);
    }
  }

  private void band(
      Graphics2D paper,
      PaperChart chart,
      double[] middle,
      Function<RegionComparison, Double> half,
      Color colour,
      double reach) {
    if (middle.length == 0) {
      return;
    }
    paper.setColor(colour);
    for (RegionComparison region : report.comparison().regions()) {
      Double expanded = half.apply(region);
      if (expanded == null) {
        continue;
      }
      Path2D shape = new Path2D.Double();
      int first = region.band().firstIndex();
      int last = region.band().lastIndex();
      for (int i = first; i <= last; i++) {
        point(shape, chart, i, inside(middle[i] + expanded, reach), i == first);
      }
      for (int i = last; i >= first; i--) {
        point(shape, chart, i, inside(middle[i] - expanded, reach), false);
      }
      shape.closePath();
      paper.fill(shape);
    }
  }

  private static void point(Path2D shape, PaperChart chart, int i, double db, boolean begin) {
    double x = chart.x(Math.max(20, Math.min(20_000, Grid.hz(i))));
    if (begin) {
      shape.moveTo(x, chart.y(db));
    } else {
      shape.lineTo(x, chart.y(db));
    }
  }

  private static double inside(double db, double reach) {
    return Math.max(-reach, Math.min(reach, db));
  }

  private void keys(PaperChart chart, Rectangle2D frame, boolean both) {
    double y = frame.getMaxY() + 24;
    double x = chart.key(frame.getX(), y, OURS, FULL, words.get("ours"));
    if (both) {
      x = chart.key(x, y, THEIRS, DASHED, words.get("theirs"));
    }
    x = chart.key(x, y, PaperChart.INK, DOTTED, words.get("limit"));
    if (both) {
      chart.key(x, y, THEIR_BAND, new BasicStroke(6f), words.get("band"));
    }
  }

  private double reach(double[] ours, double[] theirs) {
    double furthest = LEAST_DB;
    for (double[] values : new double[][] {ours, theirs}) {
      for (double value : values) {
        furthest = Double.isNaN(value) ? furthest : Math.max(furthest, Math.abs(value));
      }
    }
    for (Region region : report.ours().set().regions()) {
      if (region.match().isPresent()) {
        furthest =
            Math.max(furthest, Math.max(region.match().get().start(), region.match().get().end()));
      }
    }
    return Math.min(MOST_DB, Math.ceil(furthest * 1.15));
  }

  private static double[] absent() {
    double[] values = new double[Grid.POINTS];
    java.util.Arrays.fill(values, Double.NaN);
    return values;
  }
}
