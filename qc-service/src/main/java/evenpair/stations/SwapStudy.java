package evenpair.stations;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Arrays;
import java.util.List;

/**
 * A station's own left−right difference, from a reference pair measured as marked and swapped.
 *
 * <p>All differences here are by simulator channel: level on the left simulator − level on the
 * right one. With e the pair's own difference (left earpiece − right earpiece) and s the station's,
 * a seating as marked shows D_m = e + s and a swapped one D_s = −e + s; so s = (D_m + D_s)/2 and e
 * = (D_m − D_s)/2. Told by earpiece instead of simulator, the swapped difference has the other
 * sign, and s is half the <em>difference</em> of the two left−right curves: the same number.
 *
 * <p>Standard uncertainty from the scatter between seatings: u = ½·√(sd_m²/n_m + sd_s²/n_s), sd
 * with n − 1 (standard error of the mean of each orientation, independent of each other; GUM 4.2,
 * from memory).
 *
 * @param leftMinusRight s(f), dB
 * @param uncertainty u(f), dB
 * @param pairDifference e(f), dB
 * @param scatterDb √ of the mean variance between seatings over 100 Hz … 8 kHz and both
 *     orientations, dB
 */
record SwapStudy(Curve leftMinusRight, Curve uncertainty, Curve pairDifference, double scatterDb) {
  /**
   * Above and below, seating alone moves a response by decibels: it would say little of the study's
   * care.
   */
  static final Band SCATTER_BAND = new Band(100, 8_000);

  static final Band SIZE_BAND = new Band(300, 3_000);

  /**
   * @param marked left − right by simulator channel, one curve a seating, earpieces as marked; two
   *     at least
   * @param swapped the same with the earpieces swapped; two at least
   */
  static SwapStudy of(List<Curve> marked, List<Curve> swapped) {
    Curve markedMean = Curve.mean(marked);
    Curve swappedMean = Curve.mean(swapped);
    double[] markedVariance = variance(marked, markedMean);
    double[] swappedVariance = variance(swapped, swappedMean);
    double[] uncertainty = new double[Grid.POINTS];
    for (int i = 0; i < uncertainty.length; i++) {
      uncertainty[i] =
          Math.sqrt(markedVariance[i] / marked.size() + swappedVariance[i] / swapped.size()) / 2;
    }
    return new SwapStudy(
        markedMean.plus(swappedMean).times(0.5),
        Curve.of(uncertainty),
        markedMean.minus(swappedMean).times(0.5),
        Math.sqrt(
            (meanOver(SCATTER_BAND, markedVariance) + meanOver(SCATTER_BAND, swappedVariance))
                / 2));
  }

  /**
   * @return mean of s over 300 Hz … 3 kHz, dB
   */
  double meanDb() {
    return leftMinusRight.mean(SIZE_BAND);
  }

  /**
   * The seating that strays most from the mean of its orientation (r.m.s. over 100 Hz … 8 kHz).
   *
   * @return its index in the list
   */
  static int farthest(List<Curve> seatings) {
    Curve mean = Curve.mean(seatings);
    int worst = 0;
    for (int i = 1; i < seatings.size(); i++) {
      if (distance(seatings.get(i), mean) > distance(seatings.get(worst), mean)) {
        worst = i;
      }
    }
    return worst;
  }

  /**
   * @return r.m.s. of the difference of two curves over 100 Hz … 8 kHz, dB
   */
  static double distance(Curve one, Curve other) {
    double[] squares = one.minus(other).toArray();
    Arrays.setAll(squares, i -> squares[i] * squares[i]);
    return Math.sqrt(meanOver(SCATTER_BAND, squares));
  }

  private static double[] variance(List<Curve> curves, Curve mean) {
    double[] sum = new double[Grid.POINTS];
    for (Curve curve : curves) {
      double[] off = curve.minus(mean).toArray();
      for (int i = 0; i < sum.length; i++) {
        sum[i] += off[i] * off[i];
      }
    }
    return Arrays.stream(sum).map(squares -> squares / (curves.size() - 1)).toArray();
  }

  private static double meanOver(Band band, double[] values) {
    return Arrays.stream(values, band.firstIndex(), band.lastIndex() + 1).average().orElseThrow();
  }
}
