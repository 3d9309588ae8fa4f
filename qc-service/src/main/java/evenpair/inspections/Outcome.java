package evenpair.inspections;

/** What one attempt came to. */
enum Outcome {
  /** It closed the inspection with this verdict. */
  PASS,
  FAIL,
  /** A good seating, and more of them are wanted before a verdict. */
  VALID,
  RESEAT,
  INVALID;

  /**
   * @return true for a mounting of the unit; an INVALID attempt is not one, because its cause is
   *     not the mounting
   */
  boolean countsAsTry() {
    return this != INVALID;
  }
}
