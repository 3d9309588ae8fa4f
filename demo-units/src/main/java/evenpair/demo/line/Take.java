package evenpair.demo.line;

import evenpair.demo.earpiece.Fault;
import java.util.random.RandomGenerator;

/**
 * How one recording goes.
 *
 * @param startSeconds from the capture's first sample to the stimulus' first one, s: latency and
 *     when recording began
 * @param flaw what goes wrong with it
 */
public record Take(double startSeconds, Flaw flaw) {
  /** Recording begins up to this much before playing, s. */
  private static final double LOOSE_START_SECONDS = 0.40;

  /** The largest start that {@link #on} gives. */
  public static final double LATEST_START_SECONDS = LOOSE_START_SECONDS + 0.1;

  private static final double NOISY_DB = 95;
  private static final double WRONG_GAIN = 8;

  /** What can go wrong with a recording of a good earpiece. */
  public enum Flaw {
    NONE,
    /** The microphones' gain stands 18 dB too high. */
    CLIPPED,
    /** A machine runs beside the bench. */
    NOISY;

    /**
     * @return the flaw that a unit with this fault meets in its first capture
     */
    public static Flaw of(Fault fault) {
      return switch (fault) {
        case CLIPPED_CAPTURE -> CLIPPED;
        case NOISY_CAPTURE -> NOISY;
        default -> NONE;
      };
    }
  }

  /**
   * @return a recording on that bench that begins at a random moment inside the span that a capture
   *     may
   */
  public static Take on(Bench bench, Flaw flaw, RandomGenerator random) {
    return new Take(bench.latencySeconds() + LOOSE_START_SECONDS * random.nextDouble(), flaw);
  }

  double gain() {
    return flaw == Flaw.CLIPPED ? WRONG_GAIN : 1;
  }

  double noiseDb(Bench bench) {
    return flaw == Flaw.NOISY ? NOISY_DB : bench.backgroundDb();
  }
}
