package evenpair.tolerance;

import evenpair.acoustics.Grid;
import java.util.stream.IntStream;

/**
 * One region's limits at its grid points as 32-bit floats, with the guard bands that hold for one
 * group of pairs.
 */
final class GroupLimits {
  final Region region;
  final int first;
  final int points;
  final float[] lower;
  final float[] upper;
  final float[] match;
  final float[] levelGuard;
  final float[] matchGuard;

  /** False: a guard band there is not known, so that nothing of the region is judged. */
  final boolean judged;

  GroupLimits(Region region, Guard guard) {
    this.region = region;
    this.first = region.band().firstIndex();
    this.points = region.band().points();
    this.lower = at(region.lower());
    this.upper = at(region.upper());
    this.match = region.match().map(this::at).orElse(null);
    this.levelGuard = new float[points];
    this.matchGuard = new float[points];
    for (int k = 0; k < points; k++) {
      levelGuard[k] = (float) guard.level(first + k);
      matchGuard[k] = match == null ? 0 : (float) guard.match(first + k);
    }
    this.judged = whole(levelGuard) && whole(matchGuard);
  }

  private float[] at(Span span) {
    float[] values = new float[points];
    for (int k = 0; k < points; k++) {
      values[k] = (float) span.at(Grid.hz(first + k), region.band());
    }
    return values;
  }

  private static boolean whole(float[] values) {
    return IntStream.range(0, values.length).noneMatch(k -> Float.isNaN(values[k]));
  }
}
