package evenpair.demo.line;

import evenpair.tolerance.Channel;

/**
 * How a bench's left ear simulator differs from its right one, half a dB being usual: a constant, a
 * slope over frequency, and a bump where the two canals' resonances lie apart.
 *
 * @param constantDb at 1 kHz, dB
 * @param perDecadeDb slope, dB a decade
 * @param bumpDb height of the bump, dB
 * @param bumpHz where it lies, Hz; it is a sixth of a decade wide (standard deviation 0.08 decades)
 */
public record SimulatorDifference(
    double constantDb, double perDecadeDb, double bumpDb, double bumpHz) {
  private static final double BUMP_WIDTH_DECADES = 0.08;

  /**
   * @return left minus right at a frequency in Hz, dB; below 20 Hz as at 20 Hz
   */
  public double db(double hz) {
    double held = Math.max(20, hz);
    double away = Math.log10(held / bumpHz) / BUMP_WIDTH_DECADES;
    return constantDb
        + perDecadeDb * Math.log10(held / 1000)
        + bumpDb * Math.exp(-0.5 * away * away);
  }

  /**
   * @return linear gain of one channel's simulator: half the difference up on the left, half down
   *     on the right
   */
  double gain(Channel channel, double hz) {
    double half = channel == Channel.LEFT ? 0.5 : -0.5;
    return Math.pow(10, half * db(hz) / 20);
  }
}
