package evenpair.tolerance;

import java.util.Optional;

/**
 * Judges measured pairs by one limit set and its golden response; immutable, may be shared between
 * threads.
 */
public interface Judge {
  /** As {@link #judge(MeasuredPair, Optional)}, nothing being known of the uncertainty. */
  default Judgement judge(MeasuredPair pair) {
    return judge(pair, Optional.empty());
  }

  /**
   * Compares with level, balance, windows, match limits, distortion, idle noise and polarity as the
   * limit set says, by its decision rule.
   *
   * @param uncertainty of the station that measured the pair, used by a guarded set only; a guarded
   *     set without it makes the judgement INVALID
   * @return the verdict with a reason for each failing check; never null, and no number in it is
   *     NaN
   */
  Judgement judge(MeasuredPair pair, Optional<Uncertainty> uncertainty);
}
