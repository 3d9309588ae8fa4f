package evenpair.stations;

import jakarta.persistence.Embeddable;

/**
 * How far a calibration is from the one before.
 *
 * @param changeDb 20·lg(this ÷ the one before); null for the first one
 * @param changed true if that is beyond the limit: a gain has moved, and the station needs an
 *     engineer's eye
 */
@Embeddable
record Change(Double changeDb, boolean changed) {
  static Change first() {
    return new Change(null, false);
  }

  /**
   * @param limitDb the largest change that is taken as the chain's own scatter, dB
   */
  static Change between(double before, double now, double limitDb) {
    double changeDb = 20 * Math.log10(now / before);
    return new Change(changeDb, !(Math.abs(changeDb) <= limitDb));
  }

  /**
   * @return {@code first}, {@code steady} or {@code changed}
   */
  String state() {
    if (changeDb == null) {
      return "first";
    }
    return changed ? "changed" : "steady";
  }
}
