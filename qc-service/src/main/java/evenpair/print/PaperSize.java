package evenpair.print;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** Sheet sizes, upright, in points (1/72 inch), with the room around what is printed. */
public enum PaperSize {
  /** ISO 216: 210 mm × 297 mm. */
  A4(595, 842, 44, 40),
  /** ANSI/ASME Y14.1 size A: 8.5 in × 11 in. */
  LETTER(612, 792, 36, 32);

  private final int width;
  private final int height;
  private final int topMargin;
  private final int bottomMargin;

  PaperSize(int width, int height, int topMargin, int bottomMargin) {
    this.width = width;
    this.height = height;
    this.topMargin = topMargin;
    this.bottomMargin = bottomMargin;
  }

  /**
   * @return the word in addresses and file names: {@code a4}, {@code letter}
   */
  public String word() {
    return name().toLowerCase(Locale.ROOT);
  }

  /**
   * @return the size of that word, whatever its case, if known
   */
  public static Optional<PaperSize> named(String word) {
    return Arrays.stream(values()).filter(size -> size.name().equalsIgnoreCase(word)).findFirst();
  }

  int width() {
    return width;
  }

  int height() {
    return height;
  }

  int topMargin() {
    return topMargin;
  }

  int bottomMargin() {
    return bottomMargin;
  }
}
