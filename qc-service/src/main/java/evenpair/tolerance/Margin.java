package evenpair.tolerance;

import evenpair.acoustics.Grid;
import java.util.List;

/**
 * How far one value is from its nearest limit.
 *
 * @param index grid index; −1 for a value without a place (level, balance)
 * @param db distance, dB, 0 or above inside
 * @param value the value, dB
 * @param limit the nearest limit, dB
 * @param scale half the width between the limits, or the limit itself if it is one-sided: ranks
 *     failures
 */
record Margin(int index, double db, double value, double limit, double scale) {
  static final int NO_PLACE = -1;

  /**
   * Written so that a NaN that slipped through earlier refusals stops the judgement instead of
   * passing it.
   */
  Margin {
    if (!Double.isFinite(db) || !Double.isFinite(value) || !Double.isFinite(limit)) {
      throw new IllegalArgumentException(
          "margin must be finite, was " + db + " dB of " + value + " to " + limit);
    }
  }

  /**
   * @return the margin of lower ≤ value ≤ upper: min(value − lower, upper − value)
   */
  static Margin inside(int index, double value, double lower, double upper, double scale) {
    double above = upper - value;
    double below = value - lower;
    return above <= below
        ? new Margin(index, above, value, upper, scale)
        : new Margin(index, below, value, lower, scale);
  }

  /**
   * @return the margin of |value| ≤ limit; the limit gets the value's sign
   */
  static Margin within(int index, double value, double limit) {
    return new Margin(index, limit - Math.abs(value), value, value < 0 ? -limit : limit, limit);
  }

  /**
   * @return the smaller of the two, the earlier one if they are equal
   */
  static Margin smaller(Margin soFar, Margin next) {
    return soFar == null || next.db < soFar.db ? next : soFar;
  }

  boolean fails() {
    return db < 0;
  }

  /**
   * @return excess ÷ half-width (÷ limit if one-sided): how bad a failure is, whatever its limits'
   *     size
   */
  double severity() {
    return -db / scale;
  }

  /**
   * @return the exact grid frequency, Hz; null without a place
   */
  Double hz() {
    return index == NO_PLACE ? null : (Double) Grid.hz(index);
  }

  RegionResult result(ReasonKind check, String region, Channel channel) {
    return new RegionResult(check, region, channel, true, db, hz(), value, limit);
  }

  /** As {@link #result}, for a check of an amount: the value and its limit without sign. */
  RegionResult amount(ReasonKind check, String region) {
    return new RegionResult(check, region, null, true, db, hz(), Math.abs(value), Math.abs(limit));
  }

  Reason reason(ReasonKind kind, String region, Channel channel) {
    return new Reason(kind, channel, region, hz(), value, limit, List.of());
  }
}
