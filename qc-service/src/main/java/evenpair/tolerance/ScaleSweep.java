package evenpair.tolerance;

import evenpair.tolerance.PairTable.Block;
import java.util.Arrays;
import java.util.List;

/** How far windows and match limits could shrink before each pair of one block leaves them. */
final class ScaleSweep {
  private static final int LANES = PairTable.LANES;

  private ScaleSweep() {}

  /**
   * @param guarded true: each value is taken as nearer to its limit by the guard band
   * @param worst takes the critical scales, by lane
   */
  static void over(Block block, List<GroupLimits> regions, boolean guarded, float[] worst) {
    float[] own = new float[LANES];
    for (GroupLimits limits : regions) {
      if (limits.judged) {
        for (Channel channel : Channel.values()) {
          Arrays.fill(own, 0);
          window(block.of(channel), limits, guarded, own);
          take(own, limits.region.required(), worst);
        }
        if (limits.match != null) {
          Arrays.fill(own, 0);
          match(block.difference, limits, guarded, own);
          take(own, limits.region.required(), worst);
        }
      }
    }
  }

  private static void window(float[] values, GroupLimits limits, boolean guarded, float[] own) {
    for (int k = 0; k < limits.points; k++) {
      float middle = (limits.lower[k] + limits.upper[k]) / 2;
      float half = (limits.upper[k] - limits.lower[k]) / 2;
      float w = guarded ? limits.levelGuard[k] : 0;
      scale(values, (limits.first + k) * LANES, middle, 1 / half, w, own);
    }
  }

  private static void match(float[] values, GroupLimits limits, boolean guarded, float[] own) {
    for (int k = 0; k < limits.points; k++) {
      float w = guarded ? limits.matchGuard[k] : 0;
      scale(values, (limits.first + k) * LANES, 0, 1 / limits.match[k], w, own);
    }
  }

  private static void scale(
      float[] values, int at, float middle, float perHalf, float guard, float[] own) {
    for (int lane = 0; lane < LANES; lane++) {
      own[lane] = Math.max(own[lane], (Math.abs(values[at + lane] - middle) + guard) * perHalf);
    }
  }

  /** A check without data counts for nothing unless its region is required. */
  private static void take(float[] own, boolean required, float[] worst) {
    for (int lane = 0; lane < LANES; lane++) {
      if (required || !Float.isNaN(own[lane])) {
        worst[lane] = Math.max(worst[lane], own[lane]);
      }
    }
  }
}
