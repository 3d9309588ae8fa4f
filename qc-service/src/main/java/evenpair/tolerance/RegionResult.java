package evenpair.tolerance;

/**
 * How one check came out in one region for one channel, passed or not.
 *
 * @param check LEVEL, BALANCE, WINDOW, MATCH, …
 * @param region the region's name; null for level, balance and polarity
 * @param channel null where the check concerns the pair
 * @param judged false: no data there and the region is not required; then the numbers are null
 * @param marginDb distance to the nearest limit, dB, positive inside
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
    Double limitDb) {}
