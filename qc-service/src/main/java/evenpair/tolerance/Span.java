package evenpair.tolerance;

import evenpair.acoustics.Band;

/**
 * A limit over a region: one value at the region's start, one at its end, linear in log frequency
 * between; constant if equal.
 *
 * @param start value at the region's lower end
 * @param end value at the region's upper end
 */
public record Span(double start, double end) {
  /**
   * @throws IllegalArgumentException if a value is not finite
   */
  public Span {
    if (!Double.isFinite(start) || !Double.isFinite(end)) {
      throw new IllegalArgumentException("a limit must be finite, was " + start + " … " + end);
    }
  }

  /**
   * @return a limit that is the same over the whole region
   */
  public static Span constant(double value) {
    return new Span(value, value);
  }

  /**
   * @return start + (end − start)·ln(f/f_lo)/ln(f_hi/f_lo), f held inside the band (its rounded
   *     ends may lie just outside a point)
   */
  public double at(double hz, Band band) {
    if (band.toHz() == band.fromHz()) {
      return start;
    }
    double share = Math.log(hz / band.fromHz()) / Math.log(band.toHz() / band.fromHz());
    return start + (end - start) * Math.max(0, Math.min(1, share));
  }
}
