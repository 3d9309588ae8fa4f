package evenpair.batches;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.BatchMeasurement.Pooled;
import evenpair.statistics.DecisionRisk.Global;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.IntFunction;
import java.util.stream.IntStream;

/**
 * Consumer's and producer's risk of each check of a limit set over one batch. A region's risk is
 * that of its worst single grid point: points of one curve go together so closely that nothing
 * simple holds for all of them at once, and the worst one is a lower bound.
 */
final class BatchRisks {
  private final FirstPass units;
  private final LimitSet set;
  private final Pooled uncertainty;
  private final double guard;

  /**
   * @param units whose curves tell the spread, judged by the set
   */
  BatchRisks(FirstPass units, LimitSet set, Pooled uncertainty) {
    this.units = units;
    this.set = set;
    this.uncertainty = uncertainty;
    this.guard = acceptedWithin(set.decision());
  }

  /** A conditional pass that is accepted is accepted up to the limit itself. */
  private static double acceptedWithin(LimitSet.DecisionRule rule) {
    return rule.guarded() && !rule.acceptConditionalPass() ? rule.guard() : 0;
  }

  List<CheckRisk> checks() {
    List<CheckRisk> checks = new ArrayList<>();
    LimitSet.LevelLimit level = set.level();
    checks.add(single("level", "left", units.leftAlignment(), uncertainty.offsetDb(), level));
    checks.add(single("level", "right", units.rightAlignment(), uncertainty.offsetDb(), level));
    checks.add(balance(level.balanceDb()));
    for (Region region : set.regions()) {
      checks.add(window(region, "left", units.leftDeviation()));
      checks.add(window(region, "right", units.rightDeviation()));
      region
          .match()
          .ifPresent(
              match ->
                  checks.add(
                      worst(
                          "match",
                          region,
                          null,
                          i -> {
                            double limit = match.at(Grid.hz(i), region.band());
                            double um = at(uncertainty.matchDb(), i);
                            return risk(i, spread(units.difference(), i, um), -limit, limit);
                          })));
    }
    return checks;
  }

  private CheckRisk single(
      String check, String channel, double[] values, double um, LimitSet.LevelLimit level) {
    PointRisk risk = risk(-1, PointSpread.of(values, um), level.lowest(), level.highest());
    return CheckRisk.of(check, null, channel, List.of(risk));
  }

  private CheckRisk balance(double limit) {
    double[] left = units.leftAlignment();
    double[] right = units.rightAlignment();
    double[] apart = IntStream.range(0, left.length).mapToDouble(i -> left[i] - right[i]).toArray();
    PointSpread spread = PointSpread.of(apart, uncertainty.balanceDb());
    return CheckRisk.of("balance", null, null, List.of(risk(-1, spread, -limit, limit)));
  }

  private CheckRisk window(Region region, String channel, float[] deviations) {
    return worst(
        "window",
        region,
        channel,
        i -> {
          double hz = Grid.hz(i);
          double um = at(uncertainty.levelDb(), i);
          return risk(
              i,
              spread(deviations, i, um),
              region.lower().at(hz, region.band()),
              region.upper().at(hz, region.band()));
        });
  }

  private static CheckRisk worst(
      String check, Region region, String channel, IntFunction<PointRisk> riskAt) {
    List<PointRisk> points =
        IntStream.rangeClosed(region.band().firstIndex(), region.band().lastIndex())
            .mapToObj(riskAt)
            .toList();
    return CheckRisk.of(check, region.name(), channel, points);
  }

  private PointRisk risk(int at, PointSpread spread, double lower, double upper) {
    Optional<Global> risks =
        spread.known() ? Optional.of(spread.risks(lower, upper, guard)) : Optional.empty();
    return new PointRisk(at, spread, lower, upper, guard * 2 * spread.um(), risks);
  }

  private PointSpread spread(float[] flat, int point, double um) {
    int rows = flat.length / Grid.POINTS;
    double[] column =
        IntStream.range(0, rows).mapToDouble(row -> flat[row * Grid.POINTS + point]).toArray();
    return PointSpread.of(column, um);
  }

  private static double at(Curve curve, int index) {
    return curve.has(index) ? curve.at(index) : Double.NaN;
  }

  /**
   * @param at grid index; −1 for a number that has no frequency
   * @param guardDb guard band taken off each limit, dB
   * @param risks empty where spread or uncertainty is unknown
   */
  record PointRisk(
      int at,
      PointSpread spread,
      double lower,
      double upper,
      double guardDb,
      Optional<Global> risks) {
    double consumer() {
      return risks.map(Global::consumer).orElse(-1.0);
    }

    double producer() {
      return risks.map(Global::producer).orElse(-1.0);
    }
  }

  /**
   * @param region null for level and balance
   * @param channel null where both sides make one number
   * @param consumersWorst the point with the largest consumer's risk; empty if none can be told
   * @param producersWorst likewise for the producer's
   * @param unknownPoints points at which nothing can be told
   * @param alikePoints points whose spread the measurement alone explains
   */
  record CheckRisk(
      String check,
      String region,
      String channel,
      Optional<PointRisk> consumersWorst,
      Optional<PointRisk> producersWorst,
      int unknownPoints,
      int alikePoints) {
    static CheckRisk of(String check, String region, String channel, List<PointRisk> points) {
      List<PointRisk> known = points.stream().filter(point -> point.risks().isPresent()).toList();
      return new CheckRisk(
          check,
          region,
          channel,
          largest(known, true),
          largest(known, false),
          points.size() - known.size(),
          (int) known.stream().filter(p -> p.spread().explainedByMeasurement()).count());
    }

    private static Optional<PointRisk> largest(List<PointRisk> points, boolean consumers) {
      return points.stream()
          .reduce(
              (a, b) -> {
                double first = consumers ? a.consumer() : a.producer();
                double second = consumers ? b.consumer() : b.producer();
                return second > first ? b : a;
              });
    }
  }
}
