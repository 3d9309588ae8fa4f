package evenpair.demo.line;

import evenpair.acoustics.Grid;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Earpiece;
import java.util.Locale;

/**
 * What a laboratory would certify of one earpiece of a reference pair: its level at nominal
 * mounting and the design's drive, without noise.
 */
public final class CertifiedCurve {
  private CertifiedCurve() {}

  /**
   * @return text of 241 lines under a heading: frequency in Hz, level in dB SPL
   */
  public static String csv(Earpiece earpiece, Design design) {
    double driveDb = Golden.driveDb(design);
    StringBuilder text = new StringBuilder("frequency_hz,level_db\n");
    for (int i = 0; i < Grid.POINTS; i++) {
      double level = driveDb + Golden.bandMeanDb(earpiece, i);
      text.append(String.format(Locale.ROOT, "%.4f,%.3f\n", Grid.hz(i), level));
    }
    return text.toString();
  }
}
