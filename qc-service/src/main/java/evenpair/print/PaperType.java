package evenpair.print;

import java.awt.Font;
import java.awt.Graphics2D;
import java.awt.font.FontRenderContext;
import java.util.ArrayList;
import java.util.List;

/** Writes text into a {@link Drawing}, each character in the first typeface that has it. */
public final class PaperType {
  private static final FontRenderContext METRICS = new FontRenderContext(null, true, true);

  private final float points;

  /**
   * @param points size of type, 1/72 inch
   */
  public PaperType(double points) {
    this.points = (float) points;
  }

  /**
   * @return size of type, points
   */
  public double points() {
    return points;
  }

  /**
   * @return width of the text, points
   */
  public double width(String text) {
    return runs(text).stream().mapToDouble(this::width).sum();
  }

  /** Begins at x, stands on the line y. */
  public void write(Graphics2D paper, String text, double x, double y) {
    double at = x;
    for (Run run : runs(text)) {
      paper.setFont(run.face());
      paper.drawString(run.text(), (float) at, (float) y);
      at += width(run);
    }
  }

  /** Centred on x. */
  public void writeCentred(Graphics2D paper, String text, double x, double y) {
    write(paper, text, x - width(text) / 2, y);
  }

  /** Ends at x. */
  public void writeBefore(Graphics2D paper, String text, double x, double y) {
    write(paper, text, x - width(text), y);
  }

  private double width(Run run) {
    return run.face().getStringBounds(run.text(), METRICS).getWidth();
  }

  private List<Run> runs(String text) {
    List<Run> runs = new ArrayList<>();
    StringBuilder run = new StringBuilder();
    Font face = null;
    String legible = Legible.of(text);
    for (int point : legible.codePoints().toArray()) {
      Font wanted = PaperFonts.faceFor(point);
      if (face != null && wanted != face) {
        runs.add(new Run(run.toString(), face.deriveFont(points)));
        run.setLength(0);
      }
      face = wanted;
      run.appendCodePoint(point);
    }
    if (face != null) {
      runs.add(new Run(run.toString(), face.deriveFont(points)));
    }
    return runs;
  }

  private record Run(String text, Font face) {}
}
