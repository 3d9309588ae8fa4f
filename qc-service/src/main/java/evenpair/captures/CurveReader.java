package evenpair.captures;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.SourceCurve;
import java.util.Optional;

/**
 * Reads a curve from another rig: lines of frequency, level and optionally phase, separated by
 * comma, semicolon, tab or spaces, with decimal point or decimal comma, comment lines, and one
 * header line at most. The curve is brought to the grid ({@link SourceCurve}); nothing is
 * extrapolated.
 */
public final class CurveReader {
  private CurveReader() {}

  /**
   * @param file the whole file, UTF-8 or plain ASCII
   * @return the curve on the grid
   * @throws UnreadableCapture naming line and column of up to 20 problems; or if there are more
   *     than 200,000 rows (it is then not read to its end)
   */
  public static CurveFile read(byte[] file) {
    CurveTable table = new CurveText(file).read();
    SourceCurve source = new SourceCurve(table.hz(), table.db());
    Curve level = source.toGrid();
    if (firstPresent(level) < 0) {
      throw new UnreadableCapture(
          "The curve reaches no frequency that is judged: it spans "
              + source.fromHz()
              + " … "
              + source.toHz()
              + " Hz.",
          "",
          "frequencies between 20 Hz and 20 kHz");
    }
    Optional<double[]> phase = table.phaseDeg().map(source::phaseToGrid);
    return new CurveFile(level, phase, table.hz().length, source.fromHz(), source.toHz());
  }

  /**
   * Reads both channels from one file: frequency, left level, right level.
   *
   * @throws UnreadableCapture as {@link #read}; or if there is no third column
   */
  public static CurvePair readPair(byte[] file) {
    CurveTable table = new CurveText(file).read();
    double[] right =
        table
            .phaseDeg()
            .orElseThrow(
                () ->
                    new UnreadableCapture(
                        "The file has one level a line.",
                        "line 1",
                        "three columns: frequency in Hz, left level in dB, right level in dB"));
    return new CurvePair(
        new SourceCurve(table.hz(), table.db()).toGrid(),
        new SourceCurve(table.hz(), right).toGrid());
  }

  /** Both channels of a pair on the grid; absent where the file does not reach. */
  public record CurvePair(Curve left, Curve right) {}

  private static int firstPresent(Curve level) {
    for (int i = 0; i < Grid.POINTS; i++) {
      if (level.has(i)) {
        return i;
      }
    }
    return -1;
  }
}
