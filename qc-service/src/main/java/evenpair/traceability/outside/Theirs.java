package evenpair.traceability.outside;

import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The pair as somebody else measured it, and what is known of how.
 *
 * @param left one curve a seating, dB; empty if only an average of both channels is known
 * @param right likewise
 * @param average of both channels; looked at only where there are no single channels
 * @param earSimulator empty: not known
 * @param otherSimulator true: known to be a type that this service does not know
 * @param expandedDb U (k = 2) of their left − right, one number for all frequencies; empty: not
 *     known
 * @param levelled whether each channel was shifted in level for itself; empty: not known
 */
public record Theirs(
    List<Curve> left,
    List<Curve> right,
    Optional<Curve> average,
    Optional<EarSimulator> earSimulator,
    boolean otherSimulator,
    OptionalDouble expandedDb,
    Optional<Boolean> levelled) {
  public Theirs {
    left = List.copyOf(left);
    right = List.copyOf(right);
    if (left.isEmpty() != right.isEmpty()) {
      throw new IllegalArgumentException("one channel alone says nothing of a mismatch");
    }
    if (left.isEmpty() && average.isEmpty()) {
      throw new IllegalArgumentException("no curve at all");
    }
    if (expandedDb.isPresent() && !(expandedDb.getAsDouble() > 0)) {
      throw new IllegalArgumentException("an uncertainty is above 0 dB");
    }
  }

  boolean channels() {
    return !left.isEmpty();
  }

  /** Mean of their seatings; an average over seatings does not make their uncertainty smaller. */
  Curve meanLeft() {
    return Curve.mean(left);
  }

  Curve meanRight() {
    return Curve.mean(right);
  }

  Curve difference() {
    return meanLeft().minus(meanRight());
  }
}
