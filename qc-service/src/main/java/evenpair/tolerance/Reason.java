package evenpair.tolerance;

import java.util.List;

/**
 * Why a check failed or a capture could not be judged, as kind and numbers; its sentence is made
 * elsewhere, for each language.
 *
 * @param kind what was checked
 * @param channel the channel at fault; null where the pair as a whole is
 * @param region the region's name; null where the check has none. For {@link ReasonKind#NOT_JUDGED}
 *     the name of the check (see {@link #notJudged}), for {@link ReasonKind#OTHER_TUNING} the
 *     tuning that it sounds like
 * @param frequencyHz where it is worst, Hz (the exact grid frequency); null where there is no such
 *     place
 * @param measuredDb what was measured there, dB; null where there is no number. For balance and
 *     match left − right, so that the sign tells the louder side
 * @param limitDb what was allowed there, dB, with the sign of what was measured for balance and
 *     match; null where there is no number
 * @param alsoRegions regions folded into this reason (a balance failure that also exceeds match
 *     limits); may be empty
 */
public record Reason(
    ReasonKind kind,
    Channel channel,
    String region,
    Double frequencyHz,
    Double measuredDb,
    Double limitDb,
    List<String> alsoRegions) {
  public Reason {
    alsoRegions = List.copyOf(alsoRegions);
    requireFinite(frequencyHz);
    requireFinite(measuredDb);
    requireFinite(limitDb);
  }

  /**
   * @return a reason that has no place in frequency
   */
  public static Reason of(ReasonKind kind, Channel channel, Double measuredDb, Double limitDb) {
    return new Reason(kind, channel, null, null, measuredDb, limitDb, List.of());
  }

  /**
   * @param check the check's word: {@code distortion}, {@code idle-noise}, {@code guarded-decision}
   *     or {@code polarity}
   * @return the reason that a check which the limit set asks for was not made
   */
  public static Reason notJudged(String check) {
    return new Reason(ReasonKind.NOT_JUDGED, null, check, null, null, null, List.of());
  }

  /**
   * @return this reason with regions folded into it
   */
  Reason also(List<String> regions) {
    return new Reason(kind, channel, region, frequencyHz, measuredDb, limitDb, regions);
  }

  private static void requireFinite(Double value) {
    if (value != null && !Double.isFinite(value)) {
      throw new IllegalArgumentException("a reason's number must be finite, was " + value);
    }
  }
}
