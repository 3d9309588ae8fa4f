package evenpair.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.awt.Color;
import java.awt.Graphics2D;
import java.awt.geom.Rectangle2D;
import java.awt.image.BufferedImage;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CodeTests {
  /** So fine that a module is several pixels wide: its edges are then true to a few percent. */
  private static final double PIXELS_A_MM = 40;

  @Nested
  class Bars {
    /** By hand: start, 3 + 1 letters, change to digits by twos, 3 pairs, check: 9 × 11, stop 13. */
    @ParameterizedTest
    @CsvSource({"SG2-004217, 50, 0.25", "SG2-004217, 105, 0.375", "SG2-004217, 28, 0.169"})
    void areAsWideAsPrintersCanSetThem(String serial, double room, double module) {
      assertThat(BarCode.of(serial, room).orElseThrow().moduleMm()).isEqualTo(module);
    }

    @Test
    void keepTenModulesOfLightOnEitherSide() {
      BarCode code = BarCode.of("SG2-004217", 50).orElseThrow();
      BufferedImage print = printed(code, 50, 8);
      int dark = pixels(code.moduleMm() * 10);

      assertThat(darkColumns(print, 0, dark)).isZero();
      assertThat(darkColumns(print, print.getWidth() - dark, print.getWidth())).isZero();
      assertThat(darkColumns(print, 0, print.getWidth())).isPositive();
    }

    @ParameterizedTest
    @CsvSource({
      "左-004217",
      "é1",
      "''",
      "SERIAL-NUMBER_OF.64-CHARACTERS-THAT-NOBODY-WOULD-EVER-USE-0001"
    })
    void areLeftOutWhereTheyCannotBeReadBack(String serial) {
      assertThat(BarCode.of(serial, 50)).isEmpty();
    }
  }

  @Nested
  class Squares {
    @Test
    void keepFourModulesOfLightAround() {
      QrCode code = QrCode.of("SG2-004217", 16.2);
      BufferedImage print = printed(code, 16.2, 16.2);
      int light = pixels(code.moduleMm() * 4);

      assertThat(darkColumns(print, 0, light)).isZero();
      assertThat(darkColumns(print, print.getWidth() - light, print.getWidth())).isZero();
    }

    @Test
    void haveModulesOfAtLeastAQuarterMillimetreOrAreRefused() {
      assertThat(QrCode.of("x".repeat(250), 26.1).moduleMm()).isGreaterThanOrEqualTo(0.25);
      assertThatIllegalArgumentException().isThrownBy(() -> QrCode.of("x".repeat(250), 12));
    }
  }

  private static int pixels(double mm) {
    return (int) Math.floor(mm * PIXELS_A_MM);
  }

  private static BufferedImage printed(Drawing code, double widthMm, double heightMm) {
    BufferedImage print =
        new BufferedImage(pixels(widthMm), pixels(heightMm), BufferedImage.TYPE_INT_RGB);
    Graphics2D paper = print.createGraphics();
    paper.setColor(Color.WHITE);
    paper.fillRect(0, 0, print.getWidth(), print.getHeight());
    double scale = PIXELS_A_MM / Dots.POINTS_PER_MM;
    paper.scale(scale, scale);
    code.draw(
        paper,
        new Rectangle2D.Double(0, 0, widthMm * Dots.POINTS_PER_MM, heightMm * Dots.POINTS_PER_MM));
    paper.dispose();
    return print;
  }

  private static long darkColumns(BufferedImage print, int from, int to) {
    return IntStream.range(from, to)
        .filter(
            x ->
                IntStream.range(0, print.getHeight())
                    .anyMatch(y -> (print.getRGB(x, y) & 0xFF) < 128))
        .count();
  }
}
