package evenpair.tolerance;

/**
 * One check of a limit set as it stands in lists and counts.
 *
 * @param kind LEVEL, BALANCE, WINDOW or MATCH
 * @param region null for level and balance
 * @param channel null where the check concerns the pair
 */
public record FlatCheck(ReasonKind kind, String region, Channel channel) {
  /**
   * @return true if the row of a judgement is this check's
   */
  public boolean is(RegionResult result) {
    return result.check() == kind
        && result.channel() == channel
        && (region == null ? result.region() == null : region.equals(result.region()));
  }
}
