package evenpair.acoustics;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What the signal processor of a tuning does: filters of the Audio EQ Cookbook (R. Bristow-Johnson,
 * W3C Note, 8 June 2021) one after the other at one sample rate, and an overall gain. The one place
 * where a tuning's filters become gains.
 *
 * @param filters in order; none leaves the gain alone
 * @param gainDb overall gain, dB
 * @param rateHz sample rate fs at which the processor filters
 */
public record TuningFilters(List<Filter> filters, double gainDb, double rateHz) {
  /** Lowest sample rate, Hz, at which the whole grid, 20 kHz included, lies below fs/2. */
  public static final double LOWEST_RATE_HZ = 44_100;

  /** The kinds of filter; {@link #word()} is what files carry. */
  public enum Kind {
    LOW_SHELF("low-shelf"),
    HIGH_SHELF("high-shelf"),
    PEAK("peak");

    private final String word;

    Kind(String word) {
      this.word = word;
    }

    public String word() {
      return word;
    }

    /**
     * @return the kind with that word, if there is one
     */
    public static Optional<Kind> of(String word) {
      return Arrays.stream(values()).filter(kind -> kind.word.equals(word)).findFirst();
    }
  }

  /**
   * @param hz centre of a peak, corner of a shelf; above 0 and below fs/2
   * @param gainDb gain at the centre, or of the whole shelf, dB
   * @param q quality factor, above 0
   */
  public record Filter(Kind kind, double hz, double gainDb, double q) {
    private Biquad at(double rateHz) {
      return switch (kind) {
        case LOW_SHELF -> Biquad.lowShelf(hz, gainDb, q, rateHz);
        case HIGH_SHELF -> Biquad.highShelf(hz, gainDb, q, rateHz);
        case PEAK -> Biquad.peak(hz, gainDb, q, rateHz);
      };
    }
  }

  /**
   * @throws IllegalArgumentException if the rate is too low, the gain is not finite, or a filter's
   *     value is out of its range
   */
  public TuningFilters {
    filters = List.copyOf(filters);
    if (!(rateHz >= LOWEST_RATE_HZ) || !Double.isFinite(rateHz) || !Double.isFinite(gainDb)) {
      throw new IllegalArgumentException(
          "a tuning needs a finite gain and "
              + LOWEST_RATE_HZ
              + " Hz at least, was "
              + gainDb
              + " dB at "
              + rateHz
              + " Hz");
    }
    filters.forEach(filter -> filter.at(rateHz));
  }

  /**
   * @return the filters, then the overall gain
   */
  public FilterChain chain() {
    List<Biquad> sections = new ArrayList<>();
    filters.forEach(filter -> sections.add(filter.at(rateHz)));
    sections.add(Biquad.gain(gainDb));
    return new FilterChain(sections, rateHz);
  }

  /**
   * @return 20·lg|H| with the overall gain, dB, as the power mean over each grid point's band: what
   *     a measurement shows of it. The level of a response through these filters is the response's
   *     plus this, to 0.01 dB where both are gentle over one band of 2.9 %
   */
  public Curve gains() {
    return chain().curve();
  }

  /**
   * @return 241 phases of H at the grid points' exact frequencies, degrees, −180 … 180
   */
  public double[] phasesDeg() {
    FilterChain chain = chain();
    return Arrays.stream(Grid.frequencies())
        .map(hz -> Math.toDegrees(chain.response(hz).getArgument()))
        .toArray();
  }
}
