package evenpair.print;

import com.google.zxing.EncodeHintType;
import com.google.zxing.WriterException;
import com.google.zxing.qrcode.decoder.ErrorCorrectionLevel;
import com.google.zxing.qrcode.encoder.ByteMatrix;
import com.google.zxing.qrcode.encoder.Encoder;
import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.util.Map;

/**
 * A text as a QR code (ISO/IEC 18004), with the light margin of four modules that it asks for (from
 * memory). As much error correction as the room allows, at least level L.
 */
public final class QrCode implements Drawing {
  private static final int QUIET = 4;
  private static final double WIDEST_MM = 0.5;
  private static final double NARROWEST_MM = 0.25;

  private final ByteMatrix modules;
  private final double moduleMm;

  private QrCode(ByteMatrix modules, double moduleMm) {
    this.modules = modules;
    this.moduleMm = moduleMm;
  }

  /**
   * @param roomMm width and height on paper, light margin included
   * @throws IllegalArgumentException if the text does not fit with modules that a label printer can
   *     print
   */
  public static QrCode of(String text, double roomMm) {
    QrCode best = null;
    for (ErrorCorrectionLevel level :
        new ErrorCorrectionLevel[] {ErrorCorrectionLevel.M, ErrorCorrectionLevel.L}) {
      ByteMatrix modules = encoded(text, level);
      double module = Dots.widest(modules.getWidth() + 2 * QUIET, roomMm, WIDEST_MM, NARROWEST_MM);
      if (module > 0 && (best == null || module > best.moduleMm)) {
        best = new QrCode(modules, module);
      }
    }
    if (best == null) {
      throw new IllegalArgumentException(
          "a QR code of " + text.length() + " characters does not fit into " + roomMm + " mm");
    }
    return best;
  }

  private static ByteMatrix encoded(String text, ErrorCorrectionLevel level) {
    boolean latin = text.chars().allMatch(c -> c < 0x80);
    Map<EncodeHintType, ?> hints = latin ? Map.of() : Map.of(EncodeHintType.CHARACTER_SET, "UTF-8");
    try {
      return Encoder.encode(text, level, hints).getMatrix();
    } catch (WriterException e) {
      throw new IllegalArgumentException(
          "no QR code holds a text of " + text.length() + " characters", e);
    }
  }

  /**
   * @return width of one module, millimetres
   */
  double moduleMm() {
    return moduleMm;
  }

  @Override
  public void draw(Graphics2D paper, Rectangle2D room) {
    double module = moduleMm * Dots.POINTS_PER_MM;
    double x = room.getCenterX() - modules.getWidth() * module / 2;
    double y = room.getCenterY() - modules.getHeight() * module / 2;
    paper.setColor(Color.BLACK);
    for (int row = 0; row < modules.getHeight(); row++) {
      int start = 0;
      while (start < modules.getWidth()) {
        int end = start;
        while (end < modules.getWidth() && modules.get(end, row) == 1) {
          end++;
        }
        if (end > start) {
          paper.fill(
              new Rectangle2D.Double(
                  x + start * module, y + row * module, (end - start) * module, module));
        }
        start = end + 1;
      }
    }
  }
}
