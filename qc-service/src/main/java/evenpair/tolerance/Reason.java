package evenpair.tolerance;

import java.util.List;

/**
 * Why a check failed or a capture could not be judged, as kind and numbers; its sentence is made
 * elsewhere, for each language.
 *
 * @param kind what was checked
 * @param channel the channel at fault; null where the pair as a whole is
 * @param region the region's name; null where the check has none. For {@link ReasonKind#NOT_JUDGED}
 *     the name of the check (see {@link #notJudged}), for distortion its span
 * @param frequencyHz where it is worst, Hz (the exact grid frequency); null where there is no such
 *     place
 * @param measuredDb what was measured there, dB (percent for total harmonic distortion and depth,
 *     dB(A) for idle noise); null where there is no number. For balance and match left − right, so
 *     that the sign tells the louder side
 * @param limitDb what was allowed there, in the same unit, with the sign of what was measured for
 *     balance and match; null where there is no number
 * @param alsoRegions regions folded into this reason (a balance failure that also exceeds match
 *     limits); may be empty
 * @param otherTuning for {@link ReasonKind#OTHER_TUNING} the tuning that it sounds like; else null
 * @param state CONDITIONAL_PASS or CONDITIONAL_FAIL where the result lies inside the guard band;
 *     else null
 * @param guardDb that guard band, dB; else null
 * @param usbLinesHz for idle noise the tones that lie where USB frames sound, Hz; else empty
 * @param repeats for a bad seating: a try before it lost the same
 */
public record Reason(
    ReasonKind kind,
    Channel channel,
    String region,
    Double frequencyHz,
    Double measuredDb,
    Double limitDb,
    List<String> alsoRegions,
    String otherTuning,
    CheckState state,
    Double guardDb,
    List<Double> usbLinesHz,
    boolean repeats) {
  public Reason {
    alsoRegions = alsoRegions == null ? List.of() : List.copyOf(alsoRegions);
    usbLinesHz = usbLinesHz == null ? List.of() : List.copyOf(usbLinesHz);
    requireFinite(guardDb);
    usbLinesHz.forEach(Reason::requireFinite);
    requireFinite(frequencyHz);
    requireFinite(measuredDb);
    requireFinite(limitDb);
  }

  /** A reason without particulars. */
  public Reason(
      ReasonKind kind,
      Channel channel,
      String region,
      Double frequencyHz,
      Double measuredDb,
      Double limitDb,
      List<String> alsoRegions) {
    this(
        kind,
        channel,
        region,
        frequencyHz,
        measuredDb,
        limitDb,
        alsoRegions,
        null,
        null,
        null,
        List.of(),
        false);
  }

  /**
   * @return a reason that has no place in frequency
   */
  public static Reason of(ReasonKind kind, Channel channel, Double measuredDb, Double limitDb) {
    return new Reason(kind, channel, null, null, measuredDb, limitDb, List.of());
  }

  /**
   * @param check the check's word, and what stood in its way: {@code distortion} or {@code
   *     idle-noise} (nothing measured), {@code distortion-floor}, {@code idle-noise-floor} (the
   *     limit lies too near the noise), {@code idle-noise-station} (the station has no floor on
   *     record), {@code polarity}
   * @return the reason that a check which the limit set asks for was not made
   */
  public static Reason notJudged(String check) {
    return notJudged(check, null, null);
  }

  /** As {@link #notJudged(String)}, of one channel at one frequency, where these are known. */
  static Reason notJudged(String check, Channel channel, Double hz) {
    return new Reason(ReasonKind.NOT_JUDGED, channel, check, hz, null, null, List.of());
  }

  /**
   * @param tuning the tuning that the pair sounds like
   * @param itsDistanceDb r.m.s. deviation from that tuning's golden response, dB
   * @param ownDistanceDb the same from the stated tuning's
   */
  static Reason otherTuning(String tuning, double itsDistanceDb, double ownDistanceDb) {
    return new Reason(
        ReasonKind.OTHER_TUNING,
        null,
        null,
        null,
        itsDistanceDb,
        ownDistanceDb,
        List.of(),
        tuning,
        null,
        null,
        List.of(),
        false);
  }

  /**
   * @return this reason with regions folded into it
   */
  Reason also(List<String> regions) {
    return new Reason(
        kind,
        channel,
        region,
        frequencyHz,
        measuredDb,
        limitDb,
        regions,
        otherTuning,
        state,
        guardDb,
        usbLinesHz,
        repeats);
  }

  /**
   * @return this reason of a result inside the guard band
   */
  Reason guarded(CheckState state, double guardDb) {
    return new Reason(
        kind,
        channel,
        region,
        frequencyHz,
        measuredDb,
        limitDb,
        alsoRegions,
        otherTuning,
        state,
        guardDb,
        usbLinesHz,
        repeats);
  }

  /**
   * @return this reason naming tones where USB frames sound
   */
  Reason withUsbLines(List<Double> hz) {
    return new Reason(
        kind,
        channel,
        region,
        frequencyHz,
        measuredDb,
        limitDb,
        alsoRegions,
        otherTuning,
        state,
        guardDb,
        hz,
        repeats);
  }

  private static void requireFinite(Double value) {
    if (value != null && !Double.isFinite(value)) {
      throw new IllegalArgumentException("a reason's number must be finite, was " + value);
    }
  }
}
