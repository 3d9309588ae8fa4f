package evenpair.batches;

import evenpair.statistics.DecisionRisk;
import evenpair.statistics.DecisionRisk.Global;
import evenpair.statistics.Description;
import java.util.Arrays;

/**
 * What a batch shows of one measured number, taken apart into what is made and how it is measured:
 * u0² = sd² − u_m², not below 0.
 *
 * @param mean of the measured values, dB
 * @param sd of the measured values, with n − 1, dB
 * @param um standard uncertainty of one measured value, dB
 */
record PointSpread(double mean, double sd, double um) {
  /**
   * @param values measured ones; NaN marks an absent one
   * @param um NaN if unknown
   */
  static PointSpread of(double[] values, double um) {
    Description found = Description.of(Arrays.stream(values).filter(x -> x == x).toArray());
    return new PointSpread(found.mean(), found.sd(), um);
  }

  /**
   * @return true if there are two values and an uncertainty
   */
  boolean known() {
    return Double.isFinite(sd) && Double.isFinite(um);
  }

  /**
   * @return true if the measurement alone explains the spread: nothing is left for what is made
   */
  boolean explainedByMeasurement() {
    return known() && sd <= um;
  }

  /**
   * @param guard guard band as a multiple of the expanded uncertainty 2·u_m
   */
  Global risks(double lower, double upper, double guard) {
    return risksWithin(lower, upper, guard * 2 * um);
  }

  /**
   * @param w what is taken off each limit before a unit is accepted, dB; below 0 accepts beyond
   */
  Global risksWithin(double lower, double upper, double w) {
    double made = Math.sqrt(Math.max(0, sd * sd - um * um));
    return new DecisionRisk(lower, upper).global(mean, made, um, w);
  }
}
