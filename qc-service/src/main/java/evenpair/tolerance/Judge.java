package evenpair.tolerance;

/**
 * Judges measured pairs by one limit set and its golden response; immutable, may be shared between
 * threads.
 */
public interface Judge {
  /**
   * Compares with level, balance, windows, match limits and polarity as the limit set says.
   *
   * @return the verdict with a reason for each failing check; never null, and no number in it is
   *     NaN
   */
  Judgement judge(MeasuredPair pair);
}
