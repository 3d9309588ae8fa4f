package evenpair.batches;

import evenpair.statistics.ToleranceFactor;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/** Tolerance factors that have been asked for: rows of a batch mostly hold equally many units. */
final class Factors {
  private static final int KEPT = 500;
  private static final Map<Asked, Double> KNOWN = new ConcurrentHashMap<>();

  private Factors() {}

  private record Asked(int n, double share, double confidence) {}

  static double twoSided(int n, double share, double confidence) {
    if (KNOWN.size() > KEPT) {
      KNOWN.clear();
    }
    return KNOWN.computeIfAbsent(
        new Asked(n, share, confidence),
        asked -> ToleranceFactor.twoSided(asked.n(), asked.share(), asked.confidence()));
  }
}
