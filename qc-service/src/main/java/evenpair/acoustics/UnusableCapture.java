package evenpair.acoustics;

import java.util.Locale;

/**
 * A capture that decodes but cannot be turned into a response. Carries what is wrong, where, and by
 * how much.
 */
public final class UnusableCapture extends Exception {
  private static final long serialVersionUID = 1L;

  /** What is wrong, and what {@link #measured()} and {@link #allowed()} mean for it. */
  public enum Flaw {
    /** Neighbouring samples at full scale: their number, and how many there may be at most. */
    CLIPPED,
    /** Digital silence: the largest |sample| re full scale, and what it must exceed. */
    SILENT,
    /**
     * No sweep found: octaves between 100 Hz and 16 kHz that arrive together, and how many must.
     */
    NO_SWEEP,
    /**
     * The sweep begins too long after the capture's start: seconds, and the most that is allowed.
     */
    BEGUN_TOO_EARLY,
    /**
     * The sweep begins too soon after the capture's start (or before it): seconds, and the least
     * that is needed.
     */
    BEGUN_TOO_LATE,
    /**
     * Too little is left after the sweep's end: seconds (below 0: the end itself is missing), and
     * the least needed.
     */
    ENDED_TOO_EARLY,
    /**
     * A jump re the local amplitude, or a run of equal samples in seconds: its size, and the most
     * that is allowed.
     */
    DROP_OUT
  }

  private final Flaw flaw;
  private final double atSeconds;
  private final double measured;
  private final double allowed;

  /**
   * @param flaw what is wrong
   * @param atSeconds where, in seconds from the capture's start
   * @param measured the number found, see the flaw
   * @param allowed its limit, see the flaw
   */
  public UnusableCapture(Flaw flaw, double atSeconds, double measured, double allowed) {
    super(
        String.format(
            Locale.ROOT,
            "%s at %.4f s: measured %.4g, allowed %.4g",
            flaw,
            atSeconds,
            measured,
            allowed));
    this.flaw = flaw;
    this.atSeconds = atSeconds;
    this.measured = measured;
    this.allowed = allowed;
  }

  public Flaw flaw() {
    return flaw;
  }

  /**
   * @return seconds from the capture's start
   */
  public double atSeconds() {
    return atSeconds;
  }

  public double measured() {
    return measured;
  }

  public double allowed() {
    return allowed;
  }
}
