package evenpair.inspections;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Uncertainty;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.IntStream;

/**
 * The standard uncertainty of one judgement exactly as stored: curves as 32-bit floats, so that
 * judging again has the very same.
 *
 * @param studies gauge studies it came from
 * @param levelDb of one earpiece's deviation from golden, NaN where absent
 * @param matchDb of left − right
 * @param offsetDb of one earpiece's level against golden
 * @param balanceDb of a_L − a_R
 */
record UsedUncertainty(
    List<UUID> studies, float[] levelDb, float[] matchDb, double offsetDb, double balanceDb) {
  UsedUncertainty {
    studies = List.copyOf(studies);
  }

  static UsedUncertainty of(UUID study, Uncertainty uncertainty) {
    return new UsedUncertainty(
        List.of(study),
        uncertainty.levelDb().toFloats(),
        uncertainty.matchDb().toFloats(),
        uncertainty.offsetDb(),
        uncertainty.balanceDb());
  }

  Uncertainty toUncertainty() {
    return new Uncertainty(Curve.ofFloats(levelDb), Curve.ofFloats(matchDb), offsetDb, balanceDb);
  }

  /**
   * Seatings on several stations: the larger uncertainty at each point, absent where either is
   * absent. Their mean is at least as good as one by the worse station alone.
   */
  UsedUncertainty larger(UsedUncertainty other) {
    TreeSet<UUID> both = new TreeSet<>(studies);
    both.addAll(other.studies);
    return new UsedUncertainty(
        new ArrayList<>(both),
        larger(levelDb, other.levelDb),
        larger(matchDb, other.matchDb),
        Math.max(offsetDb, other.offsetDb),
        Math.max(balanceDb, other.balanceDb));
  }

  private static float[] larger(float[] a, float[] b) {
    float[] larger = new float[Grid.POINTS];
    IntStream.range(0, larger.length).forEach(i -> larger[i] = Math.max(a[i], b[i]));
    return larger;
  }
}
