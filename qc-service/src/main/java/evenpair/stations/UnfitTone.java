package evenpair.stations;

/**
 * A recording that is not the calibrator's tone, or not fit to calibrate with: what is wrong and by
 * how much.
 */
final class UnfitTone extends Exception {
  private final Flaw flaw;
  private final double measured;
  private final double allowed;

  UnfitTone(Flaw flaw, double measured, double allowed, String message) {
    super(message);
    this.flaw = flaw;
    this.measured = measured;
    this.allowed = allowed;
  }

  Flaw flaw() {
    return flaw;
  }

  /**
   * @return in the flaw's unit
   */
  double measured() {
    return measured;
  }

  /**
   * @return in the flaw's unit
   */
  double allowed() {
    return allowed;
  }

  /** What can be wrong with a tone; the word is the last part of the problem's type. */
  enum Flaw {
    /** Three or more neighbouring samples at full scale; measured in samples, allowed two. */
    CLIPPED("tone-clipped"),
    /** No sine to be found, or a very small one; dB re full scale. */
    TOO_WEAK("tone-too-weak"),
    /** The steady part is too short; seconds. */
    TOO_SHORT("tone-too-short"),
    /** Not the stated frequency; hertz off. */
    OFF_FREQUENCY("tone-off-frequency"),
    /** The level moves; dB. */
    UNSTEADY("tone-unsteady"),
    /** Distortion and noise; percent. */
    DISTORTED("tone-distorted");

    private final String word;

    Flaw(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }
  }
}
