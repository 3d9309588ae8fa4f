package evenpair.batches;

import evenpair.batches.BatchJson.Yield;
import evenpair.print.Drawing;
import evenpair.print.PaperChart;
import java.awt.BasicStroke;
import java.awt.Graphics2D;
import java.awt.geom.Line2D;
import java.awt.geom.Rectangle2D;

/** First-pass and final yield as points with their intervals on one scale of percent. */
final class YieldDrawing implements Drawing {
  private static final double LABELS = 110;

  private final String firstName;
  private final Yield first;
  private final String lastName;
  private final Yield last;

  YieldDrawing(String firstName, Yield first, String lastName, Yield last) {
    this.firstName = firstName;
    this.first = first;
    this.lastName = lastName;
    this.last = last;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    double least = Math.min(first.wilson()[0], last.wilson()[0]);
    double from = Math.max(0, Math.floor(least * 20) / 20 - 0.05);
    Rectangle2D frame =
        new Rectangle2D.Double(
            room.getX() + LABELS, room.getY() + 6, room.getWidth() - LABELS - 14, 42);
    PaperChart chart =
        new PaperChart(
            paper,
            frame,
            share -> frame.getX() + (share - from) / (1 - from) * frame.getWidth(),
            0,
            1);
    double step = PaperChart.step(1 - from, 6);
    for (double share = step * Math.ceil(from / step - 1e-9); share < 1 + 1e-9; share += step) {
      chart.draw(
          PaperChart.QUIET,
          PaperChart.FINE,
          new Line2D.Double(chart.x(share), frame.getY(), chart.x(share), frame.getMaxY()));
      paper.setColor(PaperChart.QUIET);
      PaperChart.TYPE.writeCentred(
          paper, Math.round(share * 100) + " %", chart.x(share), frame.getMaxY() + 10);
    }
    row(paper, chart, room, 0.75, firstName, first);
    row(paper, chart, room, 0.25, lastName, last);
    chart.border();
  }

  private static void row(
      Graphics2D paper,
      PaperChart chart,
      Rectangle2D room,
      double height,
      String name,
      Yield yield) {
    double y = chart.y(height);
    paper.setColor(PaperChart.INK);
    PaperChart.TYPE.write(paper, name, room.getX(), y + 2.3);
    chart.draw(
        PaperChart.INK,
        new BasicStroke(1.4f),
        new Line2D.Double(chart.x(yield.wilson()[0]), y, chart.x(yield.wilson()[1]), y));
    for (double end : yield.wilson()) {
      chart.draw(
          PaperChart.INK,
          new BasicStroke(1f),
          new Line2D.Double(chart.x(end), y - 4, chart.x(end), y + 4));
    }
    double size = 5;
    paper.setColor(PaperChart.INK);
    paper.fill(new Rectangle2D.Double(chart.x(yield.share()) - size / 2, y - size / 2, size, size));
  }
}
