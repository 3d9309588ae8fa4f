package evenpair.batches;

import evenpair.batches.StatisticsJson.Components;
import evenpair.batches.StatisticsJson.ScoredUnit;
import evenpair.print.Drawing;
import evenpair.print.PaperChart;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;

/** Hotelling's T² of every unit in production order, with its limit. */
final class ScoresDrawing implements Drawing {
  private final String title;
  private final Components components;

  ScoresDrawing(String title, Components components) {
    this.title = title;
    this.components = components;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    List<ScoredUnit> units =
        components.units().stream().filter(unit -> unit.tSquared() != null).toList();
    Rectangle2D frame =
        new Rectangle2D.Double(
            room.getX() + 34, room.getY() + 14, room.getWidth() - 40, room.getHeight() - 26);
    double highest = units.stream().mapToDouble(ScoredUnit::tSquared).max().orElse(1);
    double limit =
        Math.max(components.tSquared().memberLimit(), components.tSquared().otherLimit());
    double top = Math.max(limit * 1.2, Math.min(highest * 1.05, limit * 4));
    int count = units.size();
    PaperChart chart =
        new PaperChart(
            paper, frame, at -> frame.getX() + (at + 0.5) / count * frame.getWidth(), 0, top);
    chart.levels(title, PaperChart.step(top, 4), "%.0f");
    double[] at = new double[count];
    double[] limits = new double[count];
    for (int i = 0; i < count; i++) {
      at[i] = i;
      limits[i] =
          units.get(i).member()
              ? components.tSquared().memberLimit()
              : components.tSquared().otherLimit();
      chart.dot(i, units.get(i).tSquared());
      if (units.get(i).signals()) {
        chart.mark(i, units.get(i).tSquared(), count <= 150 ? 5 : 2.4);
      }
    }
    if (Arrays.stream(limits).allMatch(Double::isFinite)) {
      chart.line(PaperChart.INK, PaperChart.LIMIT, at, limits);
    }
    chart.border();
    paper.setColor(PaperChart.QUIET);
    PaperChart.TYPE.write(paper, units.get(0).serial(), frame.getX(), room.getMaxY() - 2);
    PaperChart.TYPE.writeBefore(
        paper, units.get(count - 1).serial(), frame.getMaxX(), room.getMaxY() - 2);
  }
}
