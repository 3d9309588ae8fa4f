package evenpair.certificates;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.BinaryBitmap;
import com.google.zxing.DecodeHintType;
import com.google.zxing.MultiFormatReader;
import com.google.zxing.NotFoundException;
import com.google.zxing.RGBLuminanceSource;
import com.google.zxing.common.HybridBinarizer;
import java.awt.image.BufferedImage;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.rendering.PDFRenderer;

/** Prints a page with so many dots an inch and reads a code from the print. */
final class Scanner {
  private Scanner() {}

  /**
   * As a hand scanner that is held a little nearer when a code is not read at once.
   *
   * @param dotsAnInch one after the other, until one is read
   */
  static Optional<String> scanNearer(byte[] pdf, BarcodeFormat format, int... dotsAnInch) {
    return Arrays.stream(dotsAnInch)
        .mapToObj(dots -> scan(pdf, format, dots))
        .flatMap(Optional::stream)
        .findFirst();
  }

  static Optional<String> scan(byte[] pdf, BarcodeFormat format, int dotsAnInch) {
    BufferedImage print = printed(pdf, dotsAnInch);
    int[] pixels =
        print.getRGB(0, 0, print.getWidth(), print.getHeight(), null, 0, print.getWidth());
    BinaryBitmap seen =
        new BinaryBitmap(
            new HybridBinarizer(
                new RGBLuminanceSource(print.getWidth(), print.getHeight(), pixels)));
    try {
      return Optional.of(
          new MultiFormatReader()
              .decode(
                  seen,
                  Map.of(
                      DecodeHintType.POSSIBLE_FORMATS,
                      List.of(format),
                      DecodeHintType.TRY_HARDER,
                      true))
              .getText());
    } catch (NotFoundException e) {
      return Optional.empty();
    }
  }

  private static BufferedImage printed(byte[] pdf, int dotsAnInch) {
    try (PDDocument document = Loader.loadPDF(pdf)) {
      return new PDFRenderer(document).renderImageWithDPI(0, dotsAnInch);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
