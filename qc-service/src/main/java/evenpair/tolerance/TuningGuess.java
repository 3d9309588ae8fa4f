package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Smoothing;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Whether a pair plays another tuning than the stated one: r.m.s. of its aligned deviation from
 * each tuning's golden response, 50 Hz–10 kHz. Common practice, simulated.
 */
public final class TuningGuess {
  private static final Band BAND = new Band(50, 10_000);

  /** So much nearer must the other tuning be, dB. */
  static final double DECISIVE_DB = 2;

  private TuningGuess() {}

  /**
   * @param pair both channels; their mean deviation is what is compared, so that one bad earpiece
   *     does not sound like a tuning
   * @param stated the tuning that the pair is said to play
   * @param goldens of the product's tunings by name, the stated one among them
   * @param alignmentBand the stated set's: the median over it is taken out
   * @return OTHER_TUNING with the nearest tuning's name, its distance as measured and the stated
   *     one's as limit; empty if the stated tuning is not farther by 2 dB, or a point of the band
   *     is absent
   * @throws IllegalArgumentException if the stated tuning has no golden response among them
   */
  public static Optional<Reason> otherThan(
      String stated, MeasuredPair pair, Map<String, GoldenResponse> goldens, Band alignmentBand) {
    if (!goldens.containsKey(stated)) {
      throw new IllegalArgumentException("no golden response of tuning " + stated);
    }
    Curve level = Curve.mean(List.of(pair.left().level(), pair.right().level()));
    if (!level.covers(BAND) || !level.covers(alignmentBand)) {
      return Optional.empty();
    }
    Curve smooth = Smoothing.TWELFTH_OCTAVE.apply(level);
    double own = distance(smooth, goldens.get(stated), alignmentBand);
    return goldens.entrySet().stream()
        .filter(other -> !other.getKey().equals(stated))
        .map(o -> Map.entry(o.getKey(), distance(smooth, o.getValue(), alignmentBand)))
        .min(Map.Entry.<String, Double>comparingByValue().thenComparing(Map.Entry.comparingByKey()))
        .filter(nearest -> own - nearest.getValue() >= DECISIVE_DB)
        .map(nearest -> Reason.otherTuning(nearest.getKey(), nearest.getValue(), own));
  }

  private static double distance(Curve level, GoldenResponse golden, Band alignmentBand) {
    Curve difference = level.minus(Smoothing.TWELFTH_OCTAVE.apply(golden.level()));
    Curve aligned = difference.plus(-difference.median(alignmentBand));
    double sum = 0;
    for (int i = BAND.firstIndex(); i <= BAND.lastIndex(); i++) {
      sum += aligned.at(i) * aligned.at(i);
    }
    return Math.sqrt(sum / BAND.points());
  }
}
