package evenpair.acoustics;

/**
 * The stimulus' parameters: an exponential sweep x(t) = a·sin(2π·f1·L·e^(t/L)), 0 ≤ t ≤ T, L =
 * T/ln(f2/f1), with half-cosine fades at both ends and silence before and after it.
 *
 * <p>Source: Novak, Lotton &amp; Simon, J. Audio Eng. Soc. 63(10), 2015 (synchronized swept-sine).
 *
 * @param fromHz f1, above 0
 * @param toHz f2, above f1 and below half the sample rate
 * @param seconds T, above 0
 * @param rateHz sample rate at which it is played and recorded
 * @param fadeSeconds length of each fade, inside T
 * @param leadSeconds silence before the sweep (its noise is measured)
 * @param tailSeconds silence after the sweep
 * @param amplitude a, peak re full scale, 0 … 1
 */
public record Sweep(
    double fromHz,
    double toHz,
    double seconds,
    double rateHz,
    double fadeSeconds,
    double leadSeconds,
    double tailSeconds,
    double amplitude) {

  /**
   * @throws IllegalArgumentException naming the first parameter that is out of its range
   */
  public Sweep {
    require(fromHz > 0, "fromHz must be above 0", fromHz);
    require(
        toHz > fromHz && toHz < rateHz / 2,
        "toHz must lie between fromHz and half the sample rate",
        toHz);
    require(seconds > 0 && Double.isFinite(seconds), "seconds must be above 0", seconds);
    require(
        fadeSeconds >= 0 && 2 * fadeSeconds < seconds,
        "both fades must fit into the sweep",
        fadeSeconds);
    require(
        leadSeconds >= 0 && tailSeconds >= 0,
        "silences must not be negative",
        Math.min(leadSeconds, tailSeconds));
    require(
        amplitude > 0 && amplitude <= 1,
        "amplitude must be above 0 and at most 1 (full scale)",
        amplitude);
  }

  /**
   * The default stimulus at a sample rate: 10 Hz … 22 kHz (or 0.49·fs if lower) in 1.2 s at −12
   * dBFS, 350 ms before and 300 ms after.
   */
  public static Sweep standard(double rateHz) {
    return new Sweep(
        10,
        Math.min(22_000, 0.49 * rateHz),
        1.2,
        rateHz,
        0.010,
        0.350,
        0.300,
        Math.pow(10, -12.0 / 20));
  }

  /**
   * @return L = T/ln(f2/f1), seconds: the n-th harmonic arrives L·ln(n) before the linear response
   */
  public double rate() {
    return seconds / Math.log(toHz / fromHz);
  }

  /**
   * @return where the fade-in ends, Hz: below it the sweep is weaker than its law
   */
  double usableFromHz() {
    return fromHz * Math.exp(fadeSeconds / rate());
  }

  /**
   * @return where the fade-out begins, Hz: above it the sweep is weaker than its law
   */
  double usableToHz() {
    return toHz * Math.exp(-fadeSeconds / rate());
  }

  private static void require(boolean holds, String rule, double value) {
    if (!holds) {
      throw new IllegalArgumentException(rule + ", was " + value);
    }
  }
}
