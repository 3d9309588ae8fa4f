package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.statistics.PrincipalComponents;
import evenpair.statistics.RobustColumns;
import evenpair.statistics.TSquaredLimit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.commons.math3.distribution.NormalDistribution;

/**
 * How far each curve lies from the ones that make a golden response, told in two ways.
 *
 * <p>Robust distance: r(f) = (L(f) − median(f))/s(f) with s = 1.4826·median absolute deviation, not
 * below 0.05 dB. A curve is odd at its farthest point if |r| there exceeds the normal quantile at 1
 * − 0.01/(2·n·m), n curves, m points; as a whole if the median of |r| over the grid exceeds the one
 * at 1 − 0.01/(2·n).
 *
 * <p>Hotelling's T² on the first principal components of the curves that are not odd so far, as
 * many as hold 95 % of their variance, five at most (common practice, no source); limits as {@link
 * TSquaredLimit} with 0.01/n.
 *
 * <p>Each of the three so names one of n good normal curves in about one of 100 builds; points of a
 * curve go together, so that it is fewer. Medians and components come from the kept curves only.
 */
final class OddCurves {
  private static final double NONE = Double.NaN;
  private static final double FALSE_ALARM = 0.01;
  private static final double SMALLEST_SCALE_DB = 0.05;
  private static final double SHARE = 0.95;
  private static final int MOST_COMPONENTS = 5;

  /**
   * Curves a component needs, so that a limit for it means something. Common practice, no source.
   */
  private static final int CURVES_A_COMPONENT = 4;

  /** Curves without which nothing is said of shapes. */
  static final int FEWEST_CURVES = 2 * CURVES_A_COMPONENT;

  private final double[][] kept;
  private final double[] median;
  private final double[] scale;
  private final double pointLimit;
  private final double wholeLimit;
  private final boolean[] shared;

  /**
   * @param kept levels of the curves that make the golden response, NaN where absent
   */
  OddCurves(double[][] kept) {
    RobustColumns robust = RobustColumns.of(kept, Grid.POINTS);
    this.kept = kept;
    this.median = robust.median();
    this.scale =
        Arrays.stream(robust.deviation())
            .map(mad -> Math.max(SMALLEST_SCALE_DB, RobustColumns.TO_STANDARD_DEVIATION * mad))
            .toArray();
    this.shared = new boolean[Grid.POINTS];
    for (int i = 0; i < shared.length; i++) {
      shared[i] = robust.count()[i] == kept.length;
    }
    this.pointLimit = limit(kept.length * Grid.POINTS);
    this.wholeLimit = limit(kept.length);
  }

  /** What the largest of so many good values, either sign, exceeds in one of 100 cases. */
  private static double limit(int values) {
    return new NormalDistribution().inverseCumulativeProbability(1 - FALSE_ALARM / (2.0 * values));
  }

  /**
   * @param others levels of curves that were left out
   * @return a finding for each kept curve, then for each other one
   */
  List<Finding> examine(double[][] others) {
    double[][] all = concat(kept, others);
    List<Distance> distances = Arrays.stream(all).map(this::distance).toList();
    boolean[] member = new boolean[all.length];
    for (int i = 0; i < kept.length; i++) {
      member[i] = !distances.get(i).odd() && complete(kept[i]);
    }
    Shapes shapes = Shapes.of(kept, member, shared);
    List<Finding> findings = new ArrayList<>();
    for (int i = 0; i < all.length; i++) {
      findings.add(new Finding(distances.get(i), shapes.shape(all[i], member[i])));
    }
    return findings;
  }

  private static double[][] concat(double[][] kept, double[][] others) {
    double[][] all = Arrays.copyOf(kept, kept.length + others.length);
    System.arraycopy(others, 0, all, kept.length, others.length);
    return all;
  }

  private boolean complete(double[] levels) {
    return IntStream.range(0, shared.length).allMatch(i -> !shared[i] || !Double.isNaN(levels[i]));
  }

  private Distance distance(double[] levels) {
    List<Double> signed = new ArrayList<>();
    int farthest = -1;
    double worst = 0;
    for (int i = 0; i < levels.length; i++) {
      double r = (levels[i] - median[i]) / scale[i];
      if (!Double.isNaN(r)) {
        signed.add(r);
        if (farthest < 0 || Math.abs(r) > Math.abs(worst)) {
          farthest = i;
          worst = r;
        }
      }
    }
    if (farthest < 0) {
      return new Distance(NONE, wholeLimit, NONE, -1, NONE, NONE, pointLimit);
    }
    double typical = RobustColumns.median(signed.stream().mapToDouble(Math::abs).toArray());
    double shift = RobustColumns.median(deviations(levels));
    double db = levels[farthest] - median[farthest];
    return new Distance(typical, wholeLimit, shift, farthest, worst, db, pointLimit);
  }

  private double[] deviations(double[] levels) {
    return IntStream.range(0, levels.length)
        .mapToDouble(i -> levels[i] - median[i])
        .filter(d -> !Double.isNaN(d))
        .toArray();
  }

  /**
   * @param typical median over the grid of |r|; NaN if curve and median share no point
   * @param typicalLimit for typical
   * @param shiftDb median over the grid of L − median, dB
   * @param at grid index of the farthest point; −1 if there is none
   * @param times r there, robust standard deviations
   * @param db L − median there, dB
   * @param limit for |times|
   */
  record Distance(
      double typical,
      double typicalLimit,
      double shiftDb,
      int at,
      double times,
      double db,
      double limit) {
    boolean oddAsAWhole() {
      return typical > typicalLimit;
    }

    boolean oddAtItsFarthest() {
      return Math.abs(times) > limit;
    }

    boolean odd() {
      return oddAsAWhole() || oddAtItsFarthest();
    }
  }

  /**
   * @param tSquared NaN where it cannot be told
   * @param limit likewise
   * @param at grid index where the components say most of the deviation; −1 likewise
   * @param db that deviation, dB
   */
  record Shape(double tSquared, double limit, int at, double db) {
    static final Shape UNKNOWN = new Shape(NONE, NONE, -1, NONE);

    boolean odd() {
      return tSquared > limit;
    }
  }

  record Finding(Distance distance, Shape shape) {
    boolean odd() {
      return distance.odd() || shape.odd();
    }
  }

  /** T² on the first components of the members, over the points that all kept curves have. */
  private record Shapes(PrincipalComponents components, int count, int[] points) {
    static Shapes of(double[][] kept, boolean[] member, boolean[] shared) {
      int[] points = IntStream.range(0, shared.length).filter(i -> shared[i]).toArray();
      double[][] rows =
          IntStream.range(0, kept.length)
              .filter(i -> member[i])
              .mapToObj(i -> at(points, kept[i]))
              .toArray(double[][]::new);
      if (points.length == 0 || rows.length < FEWEST_CURVES) {
        return new Shapes(null, 0, points);
      }
      PrincipalComponents components = PrincipalComponents.ofCovariance(rows);
      int most = Math.min(MOST_COMPONENTS, rows.length / CURVES_A_COMPONENT);
      return new Shapes(components, Math.min(most, components.componentsFor(SHARE)), points);
    }

    Shape shape(double[] levels, boolean member) {
      double[] row = at(points, levels);
      if (count == 0 || !Arrays.stream(row).allMatch(Double::isFinite)) {
        return Shape.UNKNOWN;
      }
      double alpha = FALSE_ALARM / components.rows();
      double limit =
          member
              ? TSquaredLimit.ofMember(components.rows(), count, alpha)
              : TSquaredLimit.ofAnother(components.rows(), count, alpha);
      double[] explained = components.explained(row, count);
      int most = 0;
      for (int i = 1; i < explained.length; i++) {
        most = Math.abs(explained[i]) > Math.abs(explained[most]) ? i : most;
      }
      return new Shape(components.tSquared(row, count), limit, points[most], explained[most]);
    }

    private static double[] at(int[] points, double[] levels) {
      return Arrays.stream(points).mapToDouble(i -> levels[i]).toArray();
    }
  }
}
