package evenpair.tolerance;

import java.util.List;
import java.util.Optional;

/**
 * Tells a bad mounting from a bad unit: an earpiece that is not on its ear simulator, that leaks,
 * or that sits at the wrong depth. Looked at before signal-to-noise and before judging. Immutable,
 * may be shared between threads. Common practice, simulated: no standard is behind these rules.
 */
public interface SeatingCheck {
  /**
   * Prepares what is the same for every seating.
   *
   * @param set its alignment band and seating rules are used
   * @param golden unsmoothed
   */
  static SeatingCheck of(LimitSet set, GoldenResponse golden) {
    return new MountingCheck(set, golden);
  }

  /** As {@link #of} and {@link #examine(MeasuredChannel, Channel)}, for a single look. */
  static Optional<SeatingSuspicion> examine(
      MeasuredChannel measured, Channel channel, LimitSet set, GoldenResponse golden) {
    return of(set, golden).examine(measured, channel);
  }

  /**
   * @return the first of: off the simulator, leak, depth; empty if the seating looks good or has no
   *     data to tell by
   */
  Optional<SeatingSuspicion> examine(MeasuredChannel measured, Channel channel);

  /**
   * Both channels by themselves, then their depths against each other.
   *
   * @param earlier the reasons that earlier tries of the same unit were RESEAT for, in any order; a
   *     loss that comes back within 1 dB is marked as repeating
   * @return left before right; empty if the seating looks good
   */
  List<SeatingSuspicion> examine(MeasuredPair pair, List<Reason> earlier);

  /**
   * @return false where depth cannot be told: the golden response has no peak in the span, or
   *     another one that could be taken for it
   */
  boolean tellsDepth();
}
