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
 * @param guard guard band w there, dB, 0 for simple acceptance
 */
record Margin(int index, double db, double value, double limit, double scale, double guard) {
  static final int NO_PLACE = -1;

  /**
   * Written so that a NaN that slipped through earlier refusals stops the judgement instead of
   * passing it.
   */
  Margin {
    if (!Double.isFinite(db)
        || !Double.isFinite(value)
        || !Double.isFinite(limit)
        || !Double.isFinite(guard)) {
      throw new IllegalArgumentException(
          "margin must be finite, was " + db + " dB of " + value + " to " + limit + " ± " + guard);
    }
  }

  /**
   * @return the margin of lower ≤ value ≤ upper: min(value − lower, upper − value)
   */
  static Margin inside(
      int index, double value, double lower, double upper, double scale, double guard) {
    double above = upper - value;
    double below = value - lower;
    return above <= below
        ? new Margin(index, above, value, upper, scale, guard)
        : new Margin(index, below, value, lower, scale, guard);
  }

  /**
   * @return the margin of |value| ≤ limit; the limit gets the value's sign
   */
  static Margin within(int index, double value, double limit, double guard) {
    double signed = value < 0 ? -limit : limit;
    return new Margin(index, limit - Math.abs(value), value, signed, limit, guard);
  }

  /**
   * @return the margin of value ≤ limit, decided simply
   */
  static Margin below(int index, double value, double limit, double scale) {
    return new Margin(index, limit - value, value, limit, scale, 0);
  }

  /**
   * @return the smaller of the two, the earlier one if they are equal
   */
  static Margin smaller(Margin soFar, Margin next) {
    return soFar == null || next.db < soFar.db ? next : soFar;
  }

  /**
   * @return the one in the graver state, the smaller of the two if both are in the same
   */
  static Margin graver(Margin soFar, Margin next) {
    if (soFar == null) {
      return next;
    }
    int graver = next.state().compareTo(soFar.state());
    return graver > 0 || graver == 0 && next.db < soFar.db ? next : soFar;
  }

  CheckState state() {
    return CheckState.of(db, guard);
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
    return result(check, region, channel, value, limit, RegionResult.DB);
  }

  RegionResult resultIn(String unit, ReasonKind check, String region, Channel channel) {
    return result(check, region, channel, value, limit, unit);
  }

  /** As {@link #result}, for a check of an amount: the value and its limit without sign. */
  RegionResult amount(ReasonKind check, String region) {
    return result(check, region, null, Math.abs(value), Math.abs(limit), RegionResult.DB);
  }

  private RegionResult result(
      ReasonKind check, String region, Channel channel, double shown, double limit, String unit) {
    Double band = guard > 0 ? (Double) guard : null;
    return new RegionResult(
        check, region, channel, true, db, hz(), shown, limit, state(), unit, band);
  }

  Reason reason(ReasonKind kind, String region, Channel channel) {
    Reason plain = new Reason(kind, channel, region, hz(), value, limit, List.of());
    return state() == CheckState.FAIL ? plain : plain.guarded(state(), guard);
  }
}
