package evenpair.statistics;

/**
 * What counting alone says of capability, whatever the distribution: the index of normal values of
 * which the same share lies beyond one limit, z(1 − p)/3 (the index of one limit, ISO 22514-2's way
 * of reading shares; from memory). From few units it is a modest bound and no more.
 */
public final class CountedCapability {
  private CountedCapability() {}

  /**
   * @param outside how many lie outside, of how many
   * @param confidence of the one-sided bound, between 0 and 1
   * @return what the index is not below: from Clopper's and Pearson's upper bound of the share
   */
  public static double atLeast(Proportion outside, double confidence) {
    // the upper end of a two-sided interval at 2·confidence − 1 is the one-sided bound
    double share = outside.clopperPearson(2 * confidence - 1).upper();
    return share >= 1 ? Double.NEGATIVE_INFINITY : -Normal.quantile(share) / 3;
  }
}
