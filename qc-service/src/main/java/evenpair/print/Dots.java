package evenpair.print;

/**
 * Widths of a code's narrowest part that printers of 203 and 300 dots an inch can set without
 * rounding: bars of uneven width are what makes a code unreadable.
 */
final class Dots {
  static final double POINTS_PER_MM = 72 / 25.4;

  /** Whole dots of a printer with 8 dots a millimetre, then two dots of one with 11.8. */
  private static final double[] MM = {0.5, 0.375, 0.25, 0.169};

  private Dots() {}

  /**
   * @param modules how many of the narrowest parts lie side by side, the light margins included
   * @param room millimetres
   * @param widest none wider than this, millimetres
   * @param narrowest none narrower than this, millimetres
   * @return the widest module that fits, in millimetres; 0 if none does
   */
  static double widest(int modules, double room, double widest, double narrowest) {
    for (double mm : MM) {
      if (mm <= widest && mm >= narrowest && modules * mm <= room) {
        return mm;
      }
    }
    return 0;
  }
}
