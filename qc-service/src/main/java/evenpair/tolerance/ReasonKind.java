package evenpair.tolerance;

/** The kinds of reason. {@link #word()} is what JSON carries and what the table of texts is keyed by. */
public enum ReasonKind {
  // a check of the limit set failed: FAIL
  POLARITY,
  /** One band reversed alone: one driver reversed? */
  POLARITY_BAND,
  LEVEL,
  BALANCE,
  WINDOW,
  MATCH,
  THD,
  HIGH_ORDER_DISTORTION,
  IDLE_NOISE,
  OTHER_TUNING,
  SEAL,
  // looks like a bad mounting: RESEAT
  OFF_SIMULATOR,
  LEAK,
  DEPTH,
  // decodes but cannot be judged: INVALID
  CLIPPED,
  SILENT,
  NO_SWEEP,
  BEGUN_TOO_EARLY,
  BEGUN_TOO_LATE,
  ENDED_TOO_EARLY,
  DROP_OUT,
  NOISY,
  IDENTICAL_CHANNELS,
  LENGTHS_DIFFER,
  CALIBRATION_MISSING,
  CALIBRATION_EXPIRED,
  OUTPUT_CALIBRATION_MISSING,
  OUTPUT_CALIBRATION_EXPIRED,
  CORRECTION_MISSING,
  CORRECTION_EXPIRED,
  /** The stimulus as played does not give the drive that the set asks for. */
  WRONG_DRIVE,
  /** A required region has no data. */
  NO_DATA,
  STATION_BLOCKED,
  /** The set asks for a check that this version cannot make. */
  NOT_JUDGED;

  /** @return lower case with hyphens, such as {@code window} or {@code begun-too-late} */
  public String word() {
    return name().toLowerCase(java.util.Locale.ROOT).replace('_', '-');
  }
}
