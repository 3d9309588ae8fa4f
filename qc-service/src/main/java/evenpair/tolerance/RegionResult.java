package evenpair.tolerance;

/**
 * How one check came out in one region for one channel, passed or not.
 *
 * @param check LEVEL, BALANCE, WINDOW, MATCH, …
 * @param region the region's name; for distortion its span, such as {@code 100–3000 Hz}; null for
 *     level, balance, polarity and idle noise
 * @param channel null where the check concerns the pair
 * @param judged false: there was no data for it, or the check cannot be made; then the numbers are
 *     null
 * @param marginDb distance to the nearest limit in {@code unit}, 0 or above inside; null for
 *     polarity, which has no number
 * @param atHz where the margin is smallest, Hz; null without a place
 * @param worstDb the measured value there (deviation, |difference|, offset, distortion …), in
 *     {@code unit}
 * @param limitDb the limit nearest to it there, in {@code unit}
 * @param state by the set's decision rule the worst state of any point of the region, which may be
 *     another point than that of the smallest margin; read from the margin by simple acceptance
 *     where it is not given (rows stored before there was one)
 * @param unit {@code dB}, {@code %} or {@code dB(A)}; {@code dB} where it is not given
 * @param guardDb guard band w where the margin is smallest, dB; null without one
 */
public record RegionResult(
    ReasonKind check,
    String region,
    Channel channel,
    boolean judged,
    Double marginDb,
    Double atHz,
    Double worstDb,
    Double limitDb,
    CheckState state,
    String unit,
    Double guardDb) {
  public static final String DB = "dB";
  public static final String PERCENT = "%";
  public static final String DBA = "dB(A)";

  public RegionResult {
    unit = unit == null ? DB : unit;
    state = state == null ? simply(judged, marginDb) : state;
  }

  /** A row in dB, its state by simple acceptance. */
  public RegionResult(
      ReasonKind check,
      String region,
      Channel channel,
      boolean judged,
      Double marginDb,
      Double atHz,
      Double worstDb,
      Double limitDb) {
    this(check, region, channel, judged, marginDb, atHz, worstDb, limitDb, null, null, null);
  }

  /**
   * @return the row of a check that was not made
   */
  static RegionResult notJudged(ReasonKind check, String region, Channel channel) {
    return new RegionResult(check, region, channel, false, null, null, null, null);
  }

  /**
   * @return this row in another state
   */
  RegionResult in(CheckState other) {
    return new RegionResult(
        check, region, channel, judged, marginDb, atHz, worstDb, limitDb, other, unit, guardDb);
  }

  private static CheckState simply(boolean judged, Double marginDb) {
    if (!judged) {
      return CheckState.NOT_JUDGED;
    }
    return marginDb == null ? CheckState.PASS : CheckState.of(marginDb, 0);
  }
}
