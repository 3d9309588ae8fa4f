package evenpair.batches;

import evenpair.tolerance.Channel;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Uncertainty;
import evenpair.tolerance.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * Yield against the tightness of a set: every window scaled about its own middle by s and every
 * match limit by s, level, balance and the other checks left as they are.
 */
final class Tightness {
  static final double TIGHTEST = 0.5;
  static final double WIDEST = 1.5;
  private static final int STEPS = 50;

  private Tightness() {}

  /**
   * @param scale s
   * @param passed units that would pass
   * @param of units that can be judged
   */
  record Point(double scale, int passed, int of) {}

  /**
   * @return s from 0.5 to 1.5 in steps of 0.02; at s = 1 the trial's own yield
   */
  static List<Point> of(TrialUnits units, LimitSet set, TrialWorth worth, Trial.Result result) {
    int judged = result.verdicts().length - result.count(Verdict.INVALID);
    boolean[] open = open(units, set, worth, result);
    List<Point> points = new ArrayList<>();
    for (int step = 0; step <= STEPS; step++) {
      double scale = TIGHTEST + step * (WIDEST - TIGHTEST) / STEPS;
      int passed =
          2 * step == STEPS ? result.count(Verdict.PASS) : passing(result.scale(), open, scale);
      points.add(new Point(Math.rint(scale * 100) / 100, passed, judged));
    }
    return points;
  }

  private static int passing(float[] critical, boolean[] open, double scale) {
    int passing = 0;
    for (int u = 0; u < critical.length; u++) {
      passing += open[u] && critical[u] <= scale ? 1 : 0;
    }
    return passing;
  }

  /**
   * @return by unit: true if nothing but a window or a match limit could fail it
   */
  private static boolean[] open(
      TrialUnits units, LimitSet set, TrialWorth worth, Trial.Result result) {
    boolean[] open = new boolean[units.row().length];
    for (int u = 0; u < open.length; u++) {
      int row = units.row()[u];
      open[u] =
          row >= 0
              && !result.otherwise()[u]
              && keepsLevel(units, row, set, worth.of(units.units().get(u)));
    }
    return open;
  }

  private static boolean keepsLevel(
      TrialUnits units, int row, LimitSet set, Optional<Uncertainty> worth) {
    double left = units.table().alignment(row, Channel.LEFT);
    double right = units.table().alignment(row, Channel.RIGHT);
    boolean takenOff = set.decision().guarded() && !set.decision().acceptConditionalPass();
    double factor = takenOff ? 2 * set.decision().guard() : 0;
    double offset = factor * worth.map(Uncertainty::offsetDb).orElse(0.0);
    double balance = factor * worth.map(Uncertainty::balanceDb).orElse(0.0);
    return inside(left, set, offset)
        && inside(right, set, offset)
        && Math.abs(left - right) <= set.level().balanceDb() - balance;
  }

  private static boolean inside(double level, LimitSet set, double guard) {
    return level >= set.level().lowest() + guard && level <= set.level().highest() - guard;
  }
}
