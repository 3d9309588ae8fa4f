package evenpair.traceability;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.RegionSpan;
import java.util.ArrayList;
import java.util.List;

/**
 * What is compared between units: for each region four numbers of one pair, and two distances
 * between pairs. All curves are smoothed as judged; every unit is set against the golden response
 * of the unit asked about, so that a golden response that changed in between does not look like a
 * change of the units.
 */
final class RegionMeasures {
  /** In the order of the numbers of one region. */
  enum What {
    /** Mean over the region of the left deviation d = L − G − a, dB. */
    LEFT("left"),
    /** The same of the right one. */
    RIGHT("right"),
    /** Mean of left − right over the region, dB. */
    DIFFERENCE("difference"),
    /**
     * Left − right where it takes up most of the match limit (where it is largest in a region
     * without one), dB.
     */
    WORST_DIFFERENCE("worst-difference");

    private final String word;

    What(String word) {
      this.word = word;
    }

    String word() {
      return word;
    }

    /** Of a difference its size counts, of a deviation its sign too. */
    boolean bySize() {
      return this == DIFFERENCE || this == WORST_DIFFERENCE;
    }
  }

  /** Numbers of one region. */
  static final int EACH = What.values().length;

  private final List<String> regions = new ArrayList<>();
  private final List<Band> bands = new ArrayList<>();
  private final Curve golden;
  private final Band alignment;
  private final double[] match;
  private final boolean[] judged = new boolean[Grid.POINTS];

  /**
   * @param reference curves of the unit asked about
   * @param alignment where the level is taken
   */
  RegionMeasures(JudgedCurves reference, Band alignment) {
    this.golden = Curve.of(reference.golden());
    this.alignment = alignment;
    this.match = reference.matchLimit();
    for (RegionSpan span : reference.regions()) {
      Band band = new Band(span.fromHz(), span.toHz());
      regions.add(span.name());
      bands.add(band);
      for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
        judged[i] = true;
      }
    }
  }

  List<String> regions() {
    return regions;
  }

  /**
   * One pair as it is compared.
   *
   * @param leftDb deviation of the left earpiece at the grid points, dB, NaN where absent
   * @param differenceDb left − right
   */
  record Pair(double[] leftDb, double[] rightDb, double[] differenceDb) {}

  /**
   * @param left level, smoothed as judged, dB SPL
   */
  Pair pair(Curve left, Curve right) {
    return new Pair(deviation(left), deviation(right), left.minus(right).toArray());
  }

  private double[] deviation(Curve level) {
    Curve offset = level.minus(golden);
    double a = offset.covers(alignment) ? offset.median(alignment) : Double.NaN;
    double[] deviation = offset.toArray();
    for (int i = 0; i < deviation.length; i++) {
      deviation[i] -= a;
    }
    return deviation;
  }

  /**
   * @return for each region the numbers of {@link What}; NaN where a point is absent
   */
  double[] of(Pair pair) {
    double[] values = new double[bands.size() * EACH];
    for (int r = 0; r < bands.size(); r++) {
      Band band = bands.get(r);
      values[r * EACH + What.LEFT.ordinal()] = mean(pair.leftDb(), band);
      values[r * EACH + What.RIGHT.ordinal()] = mean(pair.rightDb(), band);
      values[r * EACH + What.DIFFERENCE.ordinal()] = mean(pair.differenceDb(), band);
      int worst = worst(pair.differenceDb(), band);
      values[r * EACH + What.WORST_DIFFERENCE.ordinal()] =
          worst < 0 ? Double.NaN : pair.differenceDb()[worst];
    }
    return values;
  }

  /**
   * @return for each region the largest |left − right| ÷ match limit; NaN without a limit or data
   */
  double[] shares(Pair pair) {
    double[] shares = new double[bands.size()];
    for (int r = 0; r < shares.length; r++) {
      int worst = worst(pair.differenceDb(), bands.get(r));
      shares[r] = worst < 0 ? Double.NaN : Math.abs(pair.differenceDb()[worst]) / match[worst];
    }
    return shares;
  }

  private static double mean(double[] values, Band band) {
    double sum = 0;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      sum += values[i];
    }
    return sum / band.points();
  }

  private int worst(double[] difference, Band band) {
    int worst = -1;
    double largest = -1;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      double size = Math.abs(difference[i]) / (Double.isNaN(match[i]) ? 1 : match[i]);
      if (Double.isNaN(size)) {
        return -1;
      }
      if (size > largest) {
        largest = size;
        worst = i;
      }
    }
    return worst;
  }

  /**
   * @return root of the mean square of the differences of both channels' deviations over all points
   *     that a region judges, dB; NaN where a point is absent
   */
  double shapeDistance(Pair one, Pair other) {
    double left = square(one.leftDb(), other.leftDb());
    double right = square(one.rightDb(), other.rightDb());
    return Math.sqrt((left + right) / 2);
  }

  /**
   * @return the same of the left − right curves
   */
  double differenceDistance(Pair one, Pair other) {
    return Math.sqrt(square(one.differenceDb(), other.differenceDb()));
  }

  private double square(double[] one, double[] other) {
    double sum = 0;
    int points = 0;
    for (int i = 0; i < judged.length; i++) {
      if (judged[i]) {
        double d = one[i] - other[i];
        sum += d * d;
        points++;
      }
    }
    return sum / points;
  }
}
