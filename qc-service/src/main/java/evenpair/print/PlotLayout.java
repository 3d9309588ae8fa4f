package evenpair.print;

import java.awt.geom.Rectangle2D;

/**
 * Where the two frames of a response plot lie inside the room given, in points. Both have the same
 * dB per point and share the frequency axis, 20 Hz … 20 kHz. One decade is as long as 25 dB; as 50
 * dB where the room is too low for that.
 */
final class PlotLayout {
  static final double LOWEST_HZ = 20;
  static final double DECADES = 3;

  private static final double LEFT = 26;
  private static final double RIGHT = 62;
  private static final double ABOVE = 13;
  private static final double BETWEEN = 14;
  private static final double BELOW = 14;

  /**
   * A plot narrower than this share of the room looks lost beside a table of full width: then 50 dB
   * a decade.
   */
  private static final double LEAST_WIDTH = 0.85;

  /**
   * Room left over shows more of the level axis, but not so much that the curves look lost in it.
   */
  private static final int MOST_STEPS = 2;

  private final Aspect aspect;
  private final LevelRange levels;
  private final LevelRange differences;
  private final Rectangle2D upper;
  private final Rectangle2D lower;

  PlotLayout(ResponsePlot plot, Rectangle2D room) {
    LevelRange least = LevelRange.ofLevels(plot);
    differences = LevelRange.ofDifference(plot);
    double width = room.getWidth() - LEFT - RIGHT;
    double height = room.getHeight() - ABOVE - BETWEEN - BELOW;
    double decibels = least.span() + differences.span();
    double highestScale = height / decibels;
    aspect =
        highestScale * Aspect.DECADE_25_DB.dbPerDecade() * DECADES >= LEAST_WIDTH * width
            ? Aspect.DECADE_25_DB
            : Aspect.DECADE_50_DB;
    double pointsPerDb = Math.min(highestScale, width / (DECADES * aspect.dbPerDecade()));
    levels =
        least.wider(
            (int)
                Math.min(
                    MOST_STEPS,
                    (height - pointsPerDb * decibels) / (pointsPerDb * LevelRange.STEP)));
    double frameWidth = pointsPerDb * DECADES * aspect.dbPerDecade();
    double top =
        room.getY() + ABOVE + (height - pointsPerDb * (levels.span() + differences.span())) / 2;
    double x = room.getX() + LEFT;
    upper = new Rectangle2D.Double(x, top, frameWidth, pointsPerDb * levels.span());
    lower =
        new Rectangle2D.Double(
            x, upper.getMaxY() + BETWEEN, frameWidth, pointsPerDb * differences.span());
  }

  Aspect aspect() {
    return aspect;
  }

  LevelRange levels() {
    return levels;
  }

  LevelRange differences() {
    return differences;
  }

  Rectangle2D upper() {
    return upper;
  }

  Rectangle2D lower() {
    return lower;
  }

  /**
   * @return the place of a frequency (Hz) on the shared axis, points; may lie outside the frame
   */
  double x(double hz) {
    return upper.getX() + Math.log10(hz / LOWEST_HZ) / DECADES * upper.getWidth();
  }

  double yOfLevel(double db) {
    return y(upper, levels, db);
  }

  double yOfDifference(double db) {
    return y(lower, differences, db);
  }

  private static double y(Rectangle2D frame, LevelRange range, double db) {
    return frame.getMaxY() - (db - range.low()) / range.span() * frame.getHeight();
  }
}
