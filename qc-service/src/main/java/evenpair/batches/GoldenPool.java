package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.inspections.MeasuredCurves.MeasuredUnit;
import evenpair.statistics.Description;
import evenpair.statistics.RobustColumns;
import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredChannel;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A golden response and its spread from measured units: at every grid point the median over the
 * unsmoothed curves of both channels, pooled.
 *
 * @param levelDb median, dB SPL; NaN where no curve has a level
 * @param sdDb standard deviation with n − 1, dB; NaN for fewer than two
 * @param madDb median absolute deviation from the median, dB, not scaled
 * @param count curves that have the point
 * @param phaseDeg angle of the complex mean Σ 10^(L/20)·e^(jφ) over the curves that have a phase,
 *     −180 … 180; empty unless every point has one
 * @param withPhase how many curves have a phase
 */
record GoldenPool(
    double[] levelDb,
    double[] sdDb,
    double[] madDb,
    int[] count,
    Optional<double[]> phaseDeg,
    int withPhase) {

  /**
   * @param units one at least
   */
  static GoldenPool of(List<MeasuredUnit> units) {
    List<MeasuredChannel> curves = curves(units);
    double[][] levels = levels(curves);
    RobustColumns robust = RobustColumns.of(levels, Grid.POINTS);
    double[] sd = new double[Grid.POINTS];
    for (int i = 0; i < sd.length; i++) {
      int point = i;
      double[] present =
          Arrays.stream(levels).mapToDouble(row -> row[point]).filter(x -> x == x).toArray();
      sd[i] = Description.of(present).sd();
    }
    List<MeasuredChannel> phased = curves.stream().filter(c -> c.phaseDeg().isPresent()).toList();
    return new GoldenPool(
        robust.median(), sd, robust.deviation(), robust.count(), phase(phased), phased.size());
  }

  /**
   * @return left, right, left, right … in the units' order
   */
  static List<MeasuredChannel> curves(List<MeasuredUnit> units) {
    return units.stream()
        .flatMap(unit -> Arrays.stream(Channel.values()).map(unit.pair()::of))
        .toList();
  }

  static double[][] levels(List<MeasuredChannel> curves) {
    return curves.stream().map(curve -> curve.level().toArray()).toArray(double[][]::new);
  }

  /**
   * @return the first grid index without a level
   */
  Optional<Integer> firstGap() {
    for (int i = 0; i < levelDb.length; i++) {
      if (Double.isNaN(levelDb[i])) {
        return Optional.of(i);
      }
    }
    return Optional.empty();
  }

  private static Optional<double[]> phase(List<MeasuredChannel> curves) {
    double[] mean = new double[Grid.POINTS];
    for (int i = 0; i < mean.length; i++) {
      double real = 0;
      double imaginary = 0;
      int present = 0;
      for (MeasuredChannel curve : curves) {
        double phase = curve.phaseDeg().orElseThrow()[i];
        if (curve.level().has(i) && !Double.isNaN(phase)) {
          double magnitude = Math.pow(10, curve.level().at(i) / 20);
          real += magnitude * Math.cos(Math.toRadians(phase));
          imaginary += magnitude * Math.sin(Math.toRadians(phase));
          present++;
        }
      }
      if (present == 0) {
        return Optional.empty();
      }
      mean[i] = Math.toDegrees(Math.atan2(imaginary, real));
    }
    return Optional.of(mean);
  }
}
