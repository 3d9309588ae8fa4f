package evenpair.inspections;

import evenpair.tolerance.Channel;
import java.util.Arrays;

/**
 * How far what was computed again lies from what is on record.
 *
 * @param bitForBit every stored number is the same to the bit
 * @param largestDb largest difference of a level, dB; infinite if a point is there in only one of
 *     them
 */
record Recomputed(boolean bitForBit, double largestDb) {
  static final Recomputed NOTHING = new Recomputed(true, 0);

  static Recomputed between(StoredPair then, StoredPair now) {
    Recomputed both = NOTHING;
    for (Channel channel : Channel.values()) {
      both = both.and(between(then.of(channel), now.of(channel)));
    }
    return both;
  }

  Recomputed and(Recomputed other) {
    return new Recomputed(bitForBit && other.bitForBit, Math.max(largestDb, other.largestDb));
  }

  private static Recomputed between(StoredChannel then, StoredChannel now) {
    boolean same =
        Arrays.equals(then.levelDb(), now.levelDb())
            && Arrays.equals(then.phaseDeg(), now.phaseDeg())
            && Arrays.equals(then.snrDb(), now.snrDb())
            && same(then.distortion(), now.distortion())
            && same(then.idle(), now.idle());
    double largest = largest(then.levelDb(), now.levelDb());
    if (then.distortion() != null && now.distortion() != null) {
      largest =
          Math.max(
              largest, largest(then.distortion().harmonicsDb(), now.distortion().harmonicsDb()));
      largest =
          Math.max(
              largest, largest(then.distortion().highOrderDb(), now.distortion().highOrderDb()));
    }
    if (then.idle() != null && now.idle() != null) {
      largest = Math.max(largest, Math.abs(then.idle().dba() - now.idle().dba()));
    }
    boolean parts =
        (then.distortion() == null) == (now.distortion() == null)
            && (then.idle() == null) == (now.idle() == null);
    return new Recomputed(same, parts ? largest : Double.POSITIVE_INFINITY);
  }

  private static boolean same(StoredDistortion then, StoredDistortion now) {
    return then == null || now == null
        ? then == now
        : Arrays.equals(then.harmonicsDb(), now.harmonicsDb())
            && Arrays.equals(then.floorsDb(), now.floorsDb())
            && Arrays.equals(then.highOrderDb(), now.highOrderDb())
            && Arrays.equals(then.highOrderFloorDb(), now.highOrderFloorDb());
  }

  private static boolean same(StoredIdle then, StoredIdle now) {
    return then == null ? now == null : then.equals(now);
  }

  private static double largest(float[] then, float[] now) {
    double largest = 0;
    for (int i = 0; i < then.length; i++) {
      boolean there = Float.isFinite(then[i]);
      if (there != Float.isFinite(now[i])) {
        return Double.POSITIVE_INFINITY;
      }
      if (there) {
        largest = Math.max(largest, Math.abs((double) then[i] - now[i]));
      }
    }
    return largest;
  }
}
