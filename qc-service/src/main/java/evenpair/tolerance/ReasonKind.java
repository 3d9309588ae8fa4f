package evenpair.tolerance;

import java.util.Locale;

/**
 * The kinds of reason. {@link #word()} is what JSON carries and what the table of texts is keyed
 * by.
 */
public enum ReasonKind {
  // a check of the limit set failed
  POLARITY(Verdict.FAIL),
  /** One band reversed alone: one driver reversed? */
  POLARITY_BAND(Verdict.FAIL),
  LEVEL(Verdict.FAIL),
  BALANCE(Verdict.FAIL),
  WINDOW(Verdict.FAIL),
  MATCH(Verdict.FAIL),
  THD(Verdict.FAIL),
  HIGH_ORDER_DISTORTION(Verdict.FAIL),
  IDLE_NOISE(Verdict.FAIL),
  OTHER_TUNING(Verdict.FAIL),
  SEAL(Verdict.FAIL),
  // looks like a bad mounting
  OFF_SIMULATOR(Verdict.RESEAT),
  LEAK(Verdict.RESEAT),
  DEPTH(Verdict.RESEAT),
  // decodes but cannot be judged
  CLIPPED(Verdict.INVALID),
  SILENT(Verdict.INVALID),
  NO_SWEEP(Verdict.INVALID),
  BEGUN_TOO_EARLY(Verdict.INVALID),
  BEGUN_TOO_LATE(Verdict.INVALID),
  ENDED_TOO_EARLY(Verdict.INVALID),
  DROP_OUT(Verdict.INVALID),
  NOISY(Verdict.INVALID),
  IDENTICAL_CHANNELS(Verdict.INVALID),
  LENGTHS_DIFFER(Verdict.INVALID),
  CALIBRATION_MISSING(Verdict.INVALID),
  CALIBRATION_EXPIRED(Verdict.INVALID),
  OUTPUT_CALIBRATION_MISSING(Verdict.INVALID),
  OUTPUT_CALIBRATION_EXPIRED(Verdict.INVALID),
  CORRECTION_MISSING(Verdict.INVALID),
  CORRECTION_EXPIRED(Verdict.INVALID),
  /** The stimulus as played does not give the drive that the set asks for. */
  WRONG_DRIVE(Verdict.INVALID),
  /** A required region, or the alignment band, has no data. */
  NO_DATA(Verdict.INVALID),
  STATION_BLOCKED(Verdict.INVALID),
  /** The very recordings that were sent for another tuning of the same unit. */
  DOUBLED_TUNING(Verdict.INVALID),
  /** The very recordings that were sent for another seating. */
  DOUBLED_SEATING(Verdict.INVALID),
  /** A guarded set, and the station has no uncertainty from a valid gauge study. */
  UNCERTAINTY_MISSING(Verdict.INVALID),
  /** The guard band is so wide that no value would pass. */
  GUARD_TOO_WIDE(Verdict.INVALID),
  /**
   * The set asks for a check that this version cannot make, or that this capture does not allow.
   */
  NOT_JUDGED(Verdict.INVALID);

  private final Verdict verdict;

  ReasonKind(Verdict verdict) {
    this.verdict = verdict;
  }

  /**
   * @return what a reason of this kind makes of an attempt: FAIL, RESEAT or INVALID
   */
  public Verdict verdict() {
    return verdict;
  }

  /**
   * @return lower case with hyphens, such as {@code window} or {@code begun-too-late}
   */
  public String word() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
