package evenpair.tolerance;

/**
 * How one check came out in one region for one channel, passed or not.
 *
 * @param check LEVEL, BALANCE, WINDOW, MATCH, …
 * @param region the region's name; null for level, balance and polarity
 * @param channel null where the check concerns the pair
 * @param judged false: there was no data for it, or the check cannot be made; then the numbers are
 *     null
 * @param marginDb distance to the nearest limit, dB, 0 or above inside; null for polarity, which
 *     has no dB
 * @param atHz where the margin is smallest, Hz; null without a place
 * @param worstDb the measured value there (deviation, |difference|, offset), dB
 * @param limitDb the limit nearest to it there, dB
 */
public record RegionResult(
    ReasonKind check,
    String region,
    Channel channel,
    boolean judged,
    Double marginDb,
    Double atHz,
    Double worstDb,
    Double limitDb) {

  /**
   * @return the row of a check that was not made
   */
  static RegionResult notJudged(ReasonKind check, String region, Channel channel) {
    return new RegionResult(check, region, channel, false, null, null, null, null);
  }
}
