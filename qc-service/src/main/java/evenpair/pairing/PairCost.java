package evenpair.pairing;

/**
 * How well two earpieces suit each other.
 *
 * @param feasible both ratios are 1 at most, and everything that must be judged has data
 * @param cost the larger of both ratios; NaN where it cannot be told
 * @param matchRatio largest |L − R|/match(f), limits less the guard band
 * @param worst the grid index where that is; −1 if no match limit is set
 * @param differenceDb L − R there
 * @param limitDb the limit there
 * @param balanceDb a_L − a_R
 * @param balanceLimitDb its limit
 * @param balanceRatio |a_L − a_R| ÷ limit
 */
record PairCost(
    boolean feasible,
    double cost,
    double matchRatio,
    int worst,
    double differenceDb,
    double limitDb,
    double balanceDb,
    double balanceLimitDb,
    double balanceRatio) {}
