package evenpair.demo.line;

/**
 * What a cable puts into the earpiece while nothing plays, as sound in the ear simulator.
 *
 * @param hissDb white noise over all frequencies, dB SPL; minus infinity for none
 * @param frameDb level of the line at 1 kHz that a badly filtered USB supply carries, dB SPL; its
 *     multiples fall by 2 dB each, those of 8 kHz stand 4 dB higher; minus infinity for none
 */
record Hum(double hissDb, double frameDb) {
  /** A cable without electronics. */
  static final Hum NONE = new Hum(Double.NEGATIVE_INFINITY, Double.NEGATIVE_INFINITY);

  /** A USB cable as it should be. */
  static final Hum USB = new Hum(16, Double.NEGATIVE_INFINITY);

  /** A USB cable whose supply lets the bus's frames through. */
  static final Hum USB_FRAMES = new Hum(16, 38);

  private static final double FRAME_HZ = 1000;
  private static final int LINES = 17;
  private static final double FALL_DB = 2;
  private static final int MICRO_FRAMES = 8;
  private static final double MICRO_FRAME_DB = 4;

  double hissPascal() {
    return pascal(hissDb);
  }

  /** Adds the frames' lines to a recording in pascal. */
  void addFrames(double[] pascal, double rateHz) {
    if (Double.isInfinite(frameDb)) {
      return;
    }
    for (int line = 1; line <= LINES; line++) {
      double step = line % MICRO_FRAMES == 0 ? MICRO_FRAME_DB : 0;
      double peak = Math.sqrt(2) * pascal(frameDb - FALL_DB * (line - 1) + step);
      double turn = 2 * Math.PI * line * FRAME_HZ / rateHz;
      for (int n = 0; n < pascal.length; n++) {
        pascal[n] += peak * Math.sin(turn * n + line);
      }
    }
  }

  private static double pascal(double db) {
    return 20e-6 * Math.pow(10, db / 20);
  }
}
