package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.batches.BatchMeasurement.Pooled;
import evenpair.batches.BatchMeasurement.StationShare;
import evenpair.batches.BatchRisks.CheckRisk;
import evenpair.batches.BatchRisks.PointRisk;
import evenpair.statistics.DecisionRisk.Global;
import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.PairTable;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * What the set of a trial risks on its units. The share of units that escape, accepted though out
 * of tolerance, lies between the risk of the worst single check and the sum over the checks: checks
 * of one curve go together in no simple way.
 */
final class TrialRisks {
  /** A spread is known to half a percent from so many units; more only take time. */
  private static final int MOST_ROWS = 20_000;

  private final Optional<Pooled> uncertainty;
  private final List<CheckRisk> checks;
  private final int units;

  private TrialRisks(Optional<Pooled> uncertainty, List<CheckRisk> checks, int units) {
    this.uncertainty = uncertainty;
    this.checks = List.copyOf(checks);
    this.units = units;
  }

  static TrialRisks of(TrialUnits units, LimitSet set, List<StationShare> shares) {
    Optional<Pooled> pooled = Pooled.of(shares);
    return new TrialRisks(
        pooled,
        pooled.map(u -> new BatchRisks(spread(units.table()), set, u).checks()).orElse(List.of()),
        units.table().rows());
  }

  /** Row by row, an even choice of the pairs. */
  private static FirstPass spread(PairTable table) {
    int rows = Math.min(MOST_ROWS, table.rows());
    float[] left = new float[rows * Grid.POINTS];
    float[] right = new float[rows * Grid.POINTS];
    float[] difference = new float[rows * Grid.POINTS];
    double[] leftLevel = new double[rows];
    double[] rightLevel = new double[rows];
    for (int k = 0; k < rows; k++) {
      int row = (int) ((long) k * table.rows() / rows);
      for (int i = 0; i < Grid.POINTS; i++) {
        left[k * Grid.POINTS + i] = table.deviation(row, Channel.LEFT, i);
        right[k * Grid.POINTS + i] = table.deviation(row, Channel.RIGHT, i);
        difference[k * Grid.POINTS + i] = table.difference(row, i);
      }
      leftLevel[k] = table.alignment(row, Channel.LEFT);
      rightLevel[k] = table.alignment(row, Channel.RIGHT);
    }
    return FirstPass.ofCurves(left, right, difference, leftLevel, rightLevel);
  }

  List<CheckRisk> checks() {
    return checks;
  }

  int units() {
    return units;
  }

  /**
   * @return true if nothing is known of how well the units were measured
   */
  boolean unknown() {
    return uncertainty.isEmpty() || worst().findAny().isEmpty();
  }

  /**
   * Shares of all units that escape when units are accepted inside the windows and match limits
   * scaled by s, tolerance being the set itself: each check at the point that is worst at s = 1.
   *
   * @return at least the worst check's, at most the checks' sum; NaN if unknown
   */
  Escapes escapes(double s) {
    if (unknown()) {
      return new Escapes(Double.NaN, Double.NaN);
    }
    double most = 0;
    double sum = 0;
    for (CheckRisk check : checks) {
      if (check.consumersWorst().isPresent()) {
        double risk = scaled(check.consumersWorst().get(), scales(check) ? s : 1);
        most = Math.max(most, risk);
        sum += risk;
      }
    }
    return new Escapes(most, Math.min(1, sum));
  }

  record Escapes(double atLeast, double atMost) {}

  private Stream<PointRisk> worst() {
    return checks.stream().flatMap(check -> check.consumersWorst().stream());
  }

  private static boolean scales(CheckRisk check) {
    return check.region() != null;
  }

  /** Accepted within a scaled window is accepted with a guard band of (1 − s) half its width. */
  private static double scaled(PointRisk point, double s) {
    if (s == 1) {
      return point.consumer();
    }
    double half = (point.upper() - point.lower()) / 2;
    Global risks =
        point.spread().risksWithin(point.lower(), point.upper(), point.guardDb() + (1 - s) * half);
    return risks.consumer();
  }
}
