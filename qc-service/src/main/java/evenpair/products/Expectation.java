package evenpair.products;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.TuningFilters;
import evenpair.products.ProductDefinition.TuningDefinition;
import evenpair.products.VersionRows.Golden;
import evenpair.tolerance.GoldenResponse;
import java.time.Instant;
import java.util.Optional;

/**
 * What a derived tuning's golden response should be, by the one that it is derived from.
 *
 * @param from the tuning that it is derived from
 * @param base that one's active golden response
 * @param processing what the signal processor does to it
 * @param response the base with the processing added
 */
record Expectation(String from, Golden base, TuningFilters processing, GoldenResponse response) {
  /**
   * A golden response that lies farther from its expectation than this gets a notice, dB: a
   * measured one may well differ, but a filter left out or doubled must not go unseen (common
   * practice, no source).
   */
  static final double NOTICE_ABOVE_DB = 0.5;

  /**
   * @return empty if the tuning is unknown, is not derived from another, or that one has no golden
   *     response yet
   */
  static Optional<Expectation> of(Snapshot known, String product, String tuning, Instant at) {
    return known
        .product(product)
        .flatMap(definition -> definition.tuning(tuning))
        .filter(definition -> definition.from().isPresent())
        .flatMap(
            definition ->
                known
                    .activeGolden(product, definition.from().get(), at)
                    .map(base -> of(definition, base)));
  }

  /**
   * @param tuning derived from the tuning of the base
   */
  static Expectation of(TuningDefinition tuning, Golden base) {
    TuningFilters processing = tuning.processing().orElseThrow();
    GoldenResponse response =
        new GoldenResponse(
            base.response().level().plus(processing.gains()),
            base.response().phaseDeg().map(phase -> turned(phase, processing.phasesDeg())));
    return new Expectation(base.tuning(), base, processing, response);
  }

  /** The sum of both, −180 … 180. */
  private static double[] turned(double[] phaseDeg, double[] byDeg) {
    double[] sum = new double[phaseDeg.length];
    for (int i = 0; i < sum.length; i++) {
      sum[i] = Math.IEEEremainder(phaseDeg[i] + byDeg[i], 360);
    }
    return sum;
  }

  /**
   * @param deviationDb stated − expected where its magnitude is largest, dB
   * @param atHz the exact grid frequency there
   */
  record Deviation(double deviationDb, double atHz) {
    boolean notable() {
      return Math.abs(deviationDb) > NOTICE_ABOVE_DB;
    }
  }

  /**
   * @return where a golden response of the tuning lies farthest from this, over all 241 points,
   *     unsmoothed
   */
  Deviation deviation(GoldenResponse golden) {
    Curve apart = golden.level().minus(response.level());
    int largest = 0;
    for (int i = 1; i < Grid.POINTS; i++) {
      largest = Math.abs(apart.at(i)) > Math.abs(apart.at(largest)) ? i : largest;
    }
    return new Deviation(apart.at(largest), Grid.hz(largest));
  }
}
