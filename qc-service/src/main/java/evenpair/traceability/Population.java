package evenpair.traceability;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.traceability.RegionMeasures.Pair;
import evenpair.traceability.RegionMeasures.What;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.ToDoubleFunction;

/**
 * The numbers of many units beside those of one. Curves are looked at batch by batch and not kept.
 */
final class Population {
  /** Robust standard deviations; common practice, no source. */
  private static final double APART = 3;

  /** Makes the median absolute deviation of a normal distribution its standard deviation. */
  private static final double MAD_TO_SD = 1.4826;

  private final RegionMeasures measures;
  private final Pair asked;
  private final double[] askedShares;
  private final List<Member> members = new ArrayList<>();
  private final Set<String> seen = new HashSet<>();

  /**
   * One unit.
   *
   * @param values numbers of every region
   * @param shares of the match limit by region
   * @param shapeDb distance to the unit asked about
   */
  record Member(
      UUID inspection,
      String serial,
      String batch,
      String station,
      String verdict,
      Instant at,
      double[] values,
      double[] shares,
      double shapeDb,
      double differenceDb) {}

  /**
   * @param self the unit asked about, by the inspection that is asked about
   */
  Population(RegionMeasures measures, Pair asked, BatchUnit self, String batch) {
    this.measures = measures;
    this.asked = asked;
    this.askedShares = measures.shares(asked);
    seen.add(self.serial());
    members.add(member(asked, self, batch));
  }

  /** Each unit counts once, by its first inspection with curves. */
  void add(String batch, BatchCurves curves) {
    for (BatchUnit unit : curves.units()) {
      if (unit.row() >= 0 && seen.add(unit.serial())) {
        Pair pair = measures.pair(row(curves.left(), unit), row(curves.right(), unit));
        members.add(member(pair, unit, batch));
      }
    }
  }

  private static Curve row(float[] flat, BatchUnit unit) {
    int from = unit.row() * Grid.POINTS;
    return Curve.ofFloats(Arrays.copyOfRange(flat, from, from + Grid.POINTS));
  }

  private Member member(Pair pair, BatchUnit unit, String batch) {
    return new Member(
        unit.inspection(),
        unit.serial(),
        batch,
        unit.station(),
        unit.verdict(),
        unit.at(),
        measures.of(pair),
        measures.shares(pair),
        measures.shapeDistance(asked, pair),
        measures.differenceDistance(asked, pair));
  }

  int size() {
    return members.size();
  }

  /**
   * @return in production order
   */
  List<Member> inOrder() {
    return members.stream()
        .sorted(Comparator.comparing(Member::at).thenComparing(Member::inspection))
        .toList();
  }

  private Member self() {
    return members.get(0);
  }

  /**
   * @return the nearest units, the nearest first; this one is not among them
   */
  List<Member> nearest(ToDoubleFunction<Member> distance, int most) {
    return members.stream()
        .skip(1)
        .filter(member -> !Double.isNaN(distance.applyAsDouble(member)))
        .sorted(Comparator.comparingDouble(distance))
        .limit(most)
        .toList();
  }

  /**
   * @return units that take up as much of the match limit in the region as this one, or more; the
   *     most uneven first
   */
  List<Member> asUneven(int region, int most) {
    return members.stream()
        .skip(1)
        .filter(member -> member.shares()[region] >= askedShares[region])
        .sorted(Comparator.comparingDouble(member -> -member.shares()[region]))
        .limit(most)
        .toList();
  }

  /**
   * @return the region in which this unit takes up most of its match limit; −1 if none has one
   */
  int worstRegion() {
    int worst = -1;
    for (int r = 0; r < askedShares.length; r++) {
      if (askedShares[r] >= 0 && (worst < 0 || askedShares[r] > askedShares[worst])) {
        worst = r;
      }
    }
    return worst;
  }

  /** One number of this unit beside the others'. */
  AcrossJson.Measure measure(int region, What what) {
    int column = region * RegionMeasures.EACH + what.ordinal();
    double own = sized(self().values()[column], what);
    double[] all = column(column, what, null, true);
    double median = median(all);
    double[] away = Arrays.stream(all).map(v -> Math.abs(v - median)).toArray();
    double spread = MAD_TO_SD * median(away);
    String batch = self().batch();
    return new AcrossJson.Measure(
        measures.regions().get(region),
        what.word(),
        orNull(self().values()[column]),
        Double.isNaN(own) ? null : (Double) percentile(all, own),
        (what.bySize() ? own - median : Math.abs(own - median)) > APART * spread,
        all.length,
        orNull(median),
        orNull(median(column(column, what, batch, true))),
        orNull(median(column(column, what, batch, false))));
  }

  private double[] column(int column, What what, String batch, boolean inside) {
    return members.stream()
        .filter(member -> batch == null || member.batch().equals(batch) == inside)
        .mapToDouble(member -> sized(member.values()[column], what))
        .filter(value -> !Double.isNaN(value))
        .toArray();
  }

  private static double sized(double value, What what) {
    return what.bySize() ? Math.abs(value) : value;
  }

  /** Share of values below, equal ones half: (b + e/2)/n. */
  static double percentile(double[] all, double own) {
    double below = Arrays.stream(all).filter(v -> v < own).count();
    double equal = Arrays.stream(all).filter(v -> v == own).count();
    return (below + equal / 2) / all.length;
  }

  static double median(double[] values) {
    if (values.length == 0) {
      return Double.NaN;
    }
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    int half = sorted.length / 2;
    return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
  }

  private static Double orNull(double value) {
    return Double.isNaN(value) ? null : (Double) value;
  }
}
