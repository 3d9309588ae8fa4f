package evenpair.traceability.outside;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import evenpair.traceability.outside.Comparison.Assumption;
import evenpair.traceability.outside.Comparison.Question;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * Holds somebody else's left − right difference against ours, region by region: x and X are region
 * means in dB, E_n = (x − X)/√(U_lab² + U_out²) (ISO/IEC 17043, from memory), satisfactory within
 * ±1. Over R regions the coverage factor 2 is raised so that all of them together keep its 95.45 %
 * (Šidák: k_R = Φ⁻¹(1 − (1 − 0.9545^(1/R))/2), 2.42 for 3, 2.60 for 5, 2.76 for 8), by which E_n is
 * divided. No verdict on whoever measured.
 */
public final class Comparer {
  private static final double K = 2;

  /** Two-sided coverage of k = 2 under a normal distribution. */
  private static final double COVERAGE =
      2 * new NormalDistribution(0, 1).cumulativeProbability(K) - 1;

  /** Common practice, no source: where headphone measurements begin to scatter more. */
  private static final double UNSURE_ABOVE_HZ = 6000;

  private static final double THEIRS_BELOW_DB = 1.5;
  private static final double THEIRS_ABOVE_DB = 3;
  private static final double OURS_BELOW_DB = 1;
  private static final double OURS_ABOVE_DB = 2;

  /** A region of which less than half can be compared is not. */
  private static final double LEAST_SHARE = 0.5;

  /** Two channels that meet within this at a usual frequency of reference look levelled there. */
  private static final double MEETS_DB = 0.02;

  private static final double[] REFERENCES_HZ = {500, 1000};

  private final Ours ours;
  private final Theirs theirs;

  private Comparer(Ours ours, Theirs theirs) {
    this.ours = ours;
    this.theirs = theirs;
  }

  public static Comparison compare(Ours ours, Theirs theirs) {
    return new Comparer(ours, theirs).comparison();
  }

  /**
   * @param regions how many are compared, 1 upwards
   * @return the coverage factor that gives all of them together what k = 2 gives one
   */
  public static double coverage(int regions) {
    double each = 1 - Math.pow(COVERAGE, 1.0 / regions);
    return new NormalDistribution(0, 1).inverseCumulativeProbability(1 - each / 2);
  }

  private Comparison comparison() {
    if (!theirs.channels()) {
      return new Comparison(
          Outcome.NOT_COMPARED,
          false,
          true,
          K,
          List.of(),
          shapeCompared(),
          List.of(),
          List.of(Question.CHANNELS));
    }
    Curve x = theirs.difference();
    Curve reference = ours.difference();
    if (theirs.levelled().orElse(false)) {
      x = withoutOffset(x);
      reference = withoutOffset(reference);
    }
    List<RegionComparison> straight = regions(x, reference);
    List<RegionComparison> crossed = regions(x.times(-1), reference);
    boolean swapped =
        overall(straight) == Outcome.DISAGREES
            && compared(crossed) > 0
            && overall(crossed) != Outcome.DISAGREES;
    List<RegionComparison> chosen = swapped ? crossed : straight;
    return new Comparison(
        overall(chosen),
        swapped,
        false,
        coverage(Math.max(1, compared(chosen))),
        chosen,
        shapeCompared(),
        assumptions(),
        questions());
  }

  private Curve withoutOffset(Curve difference) {
    Band band = ours.set().level().band();
    return difference.covers(band) ? difference.plus(-difference.median(band)) : difference;
  }

  private boolean shapeCompared() {
    return theirs.earSimulator().filter(ours.set().earSimulator()::equals).isPresent();
  }

  private List<RegionComparison> regions(Curve x, Curve reference) {
    List<Region> all = ours.set().regions();
    List<Optional<Band>> spans = all.stream().map(region -> span(region, x, reference)).toList();
    int count = (int) spans.stream().filter(Optional::isPresent).count();
    double factor = coverage(Math.max(1, count)) / K;
    List<RegionComparison> compared = new ArrayList<>();
    for (int i = 0; i < all.size(); i++) {
      Region region = all.get(i);
      compared.add(
          spans
              .get(i)
              .map(band -> region(region, band, x, reference, factor))
              .orElseGet(() -> RegionComparison.none(region.name(), region.band())));
    }
    return compared;
  }

  private RegionComparison region(
      Region region, Band band, Curve x, Curve reference, double factor) {
    double theirMean = x.mean(band);
    double ourMean = reference.mean(band);
    double theirU =
        theirs.expandedDb().orElseGet(() -> assumed(band, THEIRS_BELOW_DB, THEIRS_ABOVE_DB));
    Double studied = ours.expandedDb().get(region.name());
    double ourU = studied != null ? studied : assumed(band, OURS_BELOW_DB, OURS_ABOVE_DB);
    double together = Math.hypot(theirU, ourU) * factor;
    double en = (theirMean - ourMean) / together;
    Double limit = region.match().map(match -> limit(match, region.band(), band)).orElse(null);
    return new RegionComparison(
        region.name(),
        band,
        theirMean,
        ourMean,
        theirU,
        ourU,
        en,
        limit,
        outcome(en, together, limit));
  }

  /** A difference that stands out of a large uncertainty is a difference all the same. */
  private static Outcome outcome(double en, double together, Double limit) {
    if (Math.abs(en) > 1) {
      return Outcome.DISAGREES;
    }
    return limit != null && together > limit ? Outcome.CANNOT_TELL : Outcome.AGREES;
  }

  private static double limit(Span match, Band whole, Band compared) {
    double sum = 0;
    for (int i = compared.firstIndex(); i <= compared.lastIndex(); i++) {
      sum += match.at(Grid.hz(i), whole);
    }
    return sum / compared.points();
  }

  /** Mean over the band's points of one value below and another above 6 kHz. */
  private static double assumed(Band band, double below, double above) {
    double sum = 0;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      sum += Grid.label(i) < UNSURE_ABOVE_HZ ? below : above;
    }
    return sum / band.points();
  }

  /** The longest run of points that both have, inside what both simulators are specified for. */
  private Optional<Band> span(Region region, Curve x, Curve reference) {
    int bestFrom = -1;
    int bestLength = 0;
    int from = -1;
    for (int i = region.band().firstIndex(); i <= region.band().lastIndex() + 1; i++) {
      boolean there =
          i <= region.band().lastIndex() && x.has(i) && reference.has(i) && specified(i);
      if (there && from < 0) {
        from = i;
      } else if (!there && from >= 0) {
        if (i - from > bestLength) {
          bestFrom = from;
          bestLength = i - from;
        }
        from = -1;
      }
    }
    return bestLength >= LEAST_SHARE * region.band().points()
        ? Optional.of(new Band(Grid.label(bestFrom), Grid.label(bestFrom + bestLength - 1)))
        : Optional.empty();
  }

  /** Of two types of simulator only what both standards specify is compared. */
  private boolean specified(int index) {
    EarSimulator our = ours.set().earSimulator();
    Optional<EarSimulator> their = theirs.earSimulator().filter(type -> type != our);
    return !theirs.otherSimulator() && their.isEmpty()
        || our.specifiedRange().holds(index)
            && their.map(type -> type.specifiedRange().holds(index)).orElse(true);
  }

  private static Outcome overall(List<RegionComparison> regions) {
    if (regions.stream().anyMatch(region -> region.outcome() == Outcome.DISAGREES)) {
      return Outcome.DISAGREES;
    }
    if (regions.stream().anyMatch(region -> region.outcome() == Outcome.AGREES)) {
      return Outcome.AGREES;
    }
    return compared(regions) > 0 ? Outcome.CANNOT_TELL : Outcome.NOT_COMPARED;
  }

  private static int compared(List<RegionComparison> regions) {
    return (int)
        regions.stream().filter(region -> region.outcome() != Outcome.NOT_COMPARED).count();
  }

  private List<Assumption> assumptions() {
    List<Assumption> assumptions = new ArrayList<>();
    if (theirs.expandedDb().isEmpty()) {
      assumptions.add(Assumption.THEIR_UNCERTAINTY);
    }
    if (!ours.set().regions().stream()
        .allMatch(region -> ours.expandedDb().containsKey(region.name()))) {
      assumptions.add(Assumption.OUR_UNCERTAINTY);
    }
    if (theirs.levelled().isEmpty()) {
      assumptions.add(Assumption.NOT_LEVELLED);
    }
    if (!shapeCompared()) {
      assumptions.add(Assumption.SIMULATOR);
    }
    return assumptions;
  }

  private List<Question> questions() {
    List<Question> questions = new ArrayList<>();
    if (theirs.expandedDb().isEmpty()) {
      questions.add(Question.UNCERTAINTY);
    }
    if (theirs.earSimulator().isEmpty() && !theirs.otherSimulator()) {
      questions.add(Question.SIMULATOR);
    }
    if (theirs.levelled().isEmpty() && looksLevelled()) {
      questions.add(Question.LEVELLED);
    }
    if (theirs.left().size() < 2) {
      questions.add(Question.SEATINGS);
    }
    return questions;
  }

  /** Their channels meet where ours do not. */
  private boolean looksLevelled() {
    Curve x = theirs.difference();
    Curve reference = ours.difference();
    for (double hz : REFERENCES_HZ) {
      int at = Grid.nearest(hz);
      if (x.has(at)
          && reference.has(at)
          && Math.abs(x.at(at)) < MEETS_DB
          && Math.abs(reference.at(at)) > 10 * MEETS_DB) {
        return true;
      }
    }
    return false;
  }
}
