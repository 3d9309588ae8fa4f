package evenpair.traceability.outside;

import evenpair.acoustics.Curve;
import evenpair.tolerance.LimitSet;
import java.util.Map;

/**
 * The pair as the line measured it.
 *
 * @param left level, mean of the valid seatings, correction applied, unsmoothed, dB SPL
 * @param right likewise
 * @param set the limit set that judged it
 * @param expandedDb U (k = 2) of left − right by name of region, from the station's gauge study;
 *     empty without one
 */
public record Ours(Curve left, Curve right, LimitSet set, Map<String, Double> expandedDb) {
  public Ours {
    expandedDb = Map.copyOf(expandedDb);
  }

  Curve difference() {
    return left.minus(right);
  }
}
