package evenpair.tolerance;

import evenpair.tolerance.FlatJudge.Outcome;
import evenpair.tolerance.PairTable.Block;
import java.util.Arrays;
import java.util.List;

/**
 * Smallest margins of every check over one block of pairs. The inner loops run over neighbouring
 * pairs at one grid point, with nothing in them but subtractions and minima.
 */
final class BlockSweep {
  private static final int LANES = PairTable.LANES;

  private final LimitSet set;
  private final boolean guarded;
  private final boolean refuses;

  /** By check: min over points of the margin, and of the margin less the guard band. */
  private final float[][] margin;

  private final float[][] guardedMargin;
  private final boolean[] noData = new boolean[LANES];

  /** By check: false where a region is not judged for this block. */
  private final boolean[] judged;

  BlockSweep(LimitSet set, int checks) {
    this.set = set;
    this.guarded = set.decision().guarded();
    this.refuses = guarded && !set.decision().acceptConditionalPass();
    this.margin = new float[checks][LANES];
    this.guardedMargin = new float[checks][LANES];
    this.judged = new boolean[checks];
  }

  void over(Block block, Guard guard, List<GroupLimits> regions) {
    Arrays.fill(noData, false);
    Arrays.fill(judged, true);
    int check = 0;
    for (Channel channel : Channel.values()) {
      level(block.offset(channel), guard.offset(), check++);
    }
    balance(block, guard.balance(), check++);
    for (GroupLimits limits : regions) {
      check = region(block, limits, check);
    }
  }

  private void level(double[] offsets, double guard, int check) {
    LimitSet.LevelLimit limit = set.level();
    for (int lane = 0; lane < LANES; lane++) {
      double a = offsets[lane];
      noData[lane] |= Double.isNaN(a);
      put(check, lane, Math.min(limit.highest() - a, a - limit.lowest()), guard);
    }
  }

  private void balance(Block block, double guard, int check) {
    for (int lane = 0; lane < LANES; lane++) {
      double apart = Math.abs(block.leftOffset[lane] - block.rightOffset[lane]);
      put(check, lane, set.level().balanceDb() - apart, guard);
    }
  }

  private void put(int check, int lane, double margin, double guard) {
    this.margin[check][lane] = (float) margin;
    this.guardedMargin[check][lane] = (float) (margin - guard);
  }

  private int region(Block block, GroupLimits limits, int from) {
    int check = from;
    for (Channel channel : Channel.values()) {
      start(check, limits);
      if (limits.judged) {
        window(block.of(channel), limits, check);
      }
      missing(limits, check++);
    }
    if (limits.match != null) {
      start(check, limits);
      if (limits.judged) {
        match(block.difference, limits, check);
      }
      check++;
    }
    return check;
  }

  private void start(int check, GroupLimits limits) {
    judged[check] = limits.judged;
    Arrays.fill(margin[check], Float.POSITIVE_INFINITY);
    Arrays.fill(guardedMargin[check], Float.POSITIVE_INFINITY);
  }

  private void window(float[] deviations, GroupLimits limits, int check) {
    for (int k = 0; k < limits.points; k++) {
      int at = (limits.first + k) * LANES;
      inside(deviations, at, limits.lower[k], limits.upper[k], margin[check]);
      if (guarded) {
        float w = limits.levelGuard[k];
        inside(deviations, at, limits.lower[k] + w, limits.upper[k] - w, guardedMargin[check]);
      }
    }
  }

  private void match(float[] differences, GroupLimits limits, int check) {
    for (int k = 0; k < limits.points; k++) {
      int at = (limits.first + k) * LANES;
      within(differences, at, limits.match[k], margin[check]);
      if (guarded) {
        within(differences, at, limits.match[k] - limits.matchGuard[k], guardedMargin[check]);
      }
    }
  }

  private static void inside(float[] values, int at, float lower, float upper, float[] worst) {
    for (int lane = 0; lane < LANES; lane++) {
      float value = values[at + lane];
      worst[lane] = Math.min(worst[lane], Math.min(upper - value, value - lower));
    }
  }

  private static void within(float[] values, int at, float limit, float[] worst) {
    for (int lane = 0; lane < LANES; lane++) {
      worst[lane] = Math.min(worst[lane], limit - Math.abs(values[at + lane]));
    }
  }

  /** A margin that is no number came from an absent point. */
  private void missing(GroupLimits limits, int check) {
    if (limits.region.required()) {
      for (int lane = 0; lane < LANES; lane++) {
        noData[lane] |= Float.isNaN(margin[check][lane]);
      }
    }
  }

  void into(Block block, boolean[] leftOut, Outcome outcome) {
    for (int lane = 0; lane < block.used; lane++) {
      int row = block.rows[lane];
      if (leftOut[row]) {
        outcome.state[row] = Outcome.NEAR;
      } else {
        into(row, lane, outcome);
      }
    }
  }

  private void into(int row, int lane, Outcome outcome) {
    if (noData[lane]) {
      outcome.state[row] = Outcome.NO_DATA;
      return;
    }
    int failing = 0;
    int last = Outcome.NONE;
    boolean insideGuard = false;
    for (int check = 0; check < margin.length; check++) {
      float plain = margin[check][lane];
      float tight = guarded ? guardedMargin[check][lane] : plain;
      if (!judged[check] || Float.isNaN(plain)) {
        continue;
      }
      if (Math.abs(plain) < FlatJudge.TOO_NEAR_DB || Math.abs(tight) < FlatJudge.TOO_NEAR_DB) {
        outcome.state[row] = Outcome.NEAR;
        return;
      }
      insideGuard |= tight < 0;
      if ((refuses ? tight : plain) < 0) {
        failing++;
        last = check;
      }
    }
    outcome.state[row] = failing == 0 ? Outcome.PASS : Outcome.FAIL;
    outcome.conditional[row] = failing == 0 && insideGuard;
    outcome.failing[row] = (short) failing;
    outcome.sole[row] = failing == 1 ? (short) last : Outcome.NONE;
    count(row, lane, outcome);
  }

  private void count(int row, int lane, Outcome outcome) {
    for (int check = 0; check < margin.length; check++) {
      float plain = margin[check][lane];
      if (!judged[check] || Float.isNaN(plain)) {
        continue;
      }
      if ((refuses ? guardedMargin[check][lane] : plain) < 0) {
        outcome.failures[check]++;
      }
      if (plain < outcome.worstMargin[check]) {
        outcome.worstMargin[check] = plain;
        outcome.worstRow[check] = row;
      }
    }
  }
}
