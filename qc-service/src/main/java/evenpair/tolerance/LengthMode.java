package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * The peak that the ear canal's length makes, whose frequency tells how deep an earpiece sits: the
 * golden response's largest in the set's span, the unit's largest within ± 25 % of it. Many
 * practitioners aim near 8 kHz with an IEC 60318-4 simulator (common practice, simulated).
 */
final class LengthMode {
  private static final double REACH = 0.25;

  /**
   * Where nothing lies within reach: what is mounted 25 % off can show its peak some percent
   * farther, where the drivers' own slope pulls it along (simulated).
   */
  private static final double LONG_REACH = 1 / 3.0;

  /**
   * A mode that moved keeps its height but for the drivers' slope; one that lost more is a driver's
   * fault (simulated: a dead tweeter costs it 6 dB).
   */
  private static final double MOST_LOST_DB = 4;

  /** Towards lower frequencies drivers are often stronger: a mode may win more than lose. */
  private static final double MOST_WON_DB = 8;

  /** A peak so little lower could be taken for it. */
  private static final double AMBIGUOUS_DB = 4;

  private final Optional<Peak> golden;

  /**
   * @param hz by a parabola through three points in log frequency
   * @param db its height
   */
  record Peak(double hz, double db) {}

  /**
   * @param golden smoothed to 1/12 octave
   */
  LengthMode(Curve golden, Band search) {
    this.golden =
        largest(peaks(golden, search.firstIndex(), search.lastIndex()))
            .filter(peak -> alone(peak, golden));
  }

  private static boolean alone(Peak peak, Curve golden) {
    return around(peak, golden, REACH).stream()
        .filter(other -> other.hz() != peak.hz())
        .noneMatch(other -> other.db() > peak.db() - AMBIGUOUS_DB);
  }

  /**
   * @return false if the golden response has no such peak, or another that could be taken for it
   */
  boolean isKnown() {
    return golden.isPresent();
  }

  /**
   * @param level of the unit, smoothed alike and as loud as the golden response
   * @return its peak; empty if it has none near the golden response's and about as high, or that is
   *     not known
   */
  Optional<Peak> in(Curve level) {
    return golden.flatMap(
        peak ->
            largest(around(peak, level, REACH))
                .or(() -> largest(around(peak, level, LONG_REACH)))
                .filter(own -> isAsHigh(own.db() - peak.db())));
  }

  private static boolean isAsHigh(double wonDb) {
    return wonDb >= -MOST_LOST_DB && wonDb <= MOST_WON_DB;
  }

  /**
   * @return how far a peak lies above the golden response's, percent of frequency
   */
  double shiftPercent(Peak peak) {
    return percent(peak, golden.orElseThrow());
  }

  /**
   * @return (f/f_reference − 1)·100
   */
  static double percent(Peak peak, Peak reference) {
    return 100 * (peak.hz() / reference.hz() - 1);
  }

  /** One grid step farther than the reach, so that a peak at its very end is still one. */
  private static List<Peak> around(Peak peak, Curve level, double reach) {
    int first = Grid.nearest(peak.hz() * (1 - reach)) - 1;
    int last = Grid.nearest(peak.hz() * (1 + reach)) + 1;
    return peaks(level, first, last);
  }

  private static Optional<Peak> largest(List<Peak> peaks) {
    return peaks.stream().max(Comparator.comparingDouble(Peak::db));
  }

  private static List<Peak> peaks(Curve level, int first, int last) {
    List<Peak> peaks = new ArrayList<>();
    for (int i = Math.max(1, first); i <= Math.min(Grid.POINTS - 2, last); i++) {
      if (level.has(i - 1) && level.has(i) && level.has(i + 1) && rises(level, i)) {
        peaks.add(peak(level, i));
      }
    }
    return peaks;
  }

  private static boolean rises(Curve level, int i) {
    return level.at(i) > level.at(i - 1) && level.at(i) >= level.at(i + 1);
  }

  private static Peak peak(Curve level, int i) {
    double before = level.at(i - 1);
    double here = level.at(i);
    double after = level.at(i + 1);
    double steps = (before - after) / (2 * (before - 2 * here + after));
    double hz = Grid.hz(i) * Math.pow(Grid.hz(i + 1) / Grid.hz(i), steps);
    return new Peak(hz, here - (before - after) * steps / 4);
  }
}
