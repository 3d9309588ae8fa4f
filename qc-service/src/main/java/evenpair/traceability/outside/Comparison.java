package evenpair.traceability.outside;

import java.util.List;

/**
 * An outside report held against the record.
 *
 * @param outcome over all regions
 * @param swapped true: it agrees only if their left is our right
 * @param averageOnly true: only an average of both channels is known, from which no mismatch can be
 *     told
 * @param coverage the factor that stands for k = 2 over all compared regions together
 * @param regions in the order of the limit set
 * @param shapeCompared whether the absolute shape may be compared: same ear-simulator type
 * @param assumptions what was taken for granted, by key
 * @param questions what would help to know, by key
 */
public record Comparison(
    Outcome outcome,
    boolean swapped,
    boolean averageOnly,
    double coverage,
    List<RegionComparison> regions,
    boolean shapeCompared,
    List<Assumption> assumptions,
    List<Question> questions) {
  public Comparison {
    regions = List.copyOf(regions);
    assumptions = List.copyOf(assumptions);
    questions = List.copyOf(questions);
  }

  /** What was taken for granted because nobody said otherwise. */
  public enum Assumption {
    /** ±1.5 dB below 6 kHz and ±3 dB above for their left − right: common practice, no source. */
    THEIR_UNCERTAINTY,
    /** ±1 dB below 6 kHz and ±2 dB above for ours, without a gauge study: common practice. */
    OUR_UNCERTAINTY,
    /** Both channels went through one chain at one setting. */
    NOT_LEVELLED,
    /** The simulator's type does not matter much for a difference between the channels. */
    SIMULATOR
  }

  /** What to ask whoever measured. */
  public enum Question {
    UNCERTAINTY,
    SIMULATOR,
    LEVELLED,
    CHANNELS,
    SEATINGS
  }
}
