package evenpair.tolerance;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Tells a leak from a weak bass driver by the shape of the loss: a leak is a high-pass that goes on
 * falling, a weak driver a low shelf that levels out. Both are fitted to the deviation over 20 Hz–1
 * kHz by weighted least squares with a free offset; the better fit wins. Common practice,
 * simulated.
 *
 * <p>The coarse search runs over tables made once, Σw(d − m̃)² = Σw·d² − 2·Σw·d·m̃ + Σw·m̃² with d
 * and m̃ free of their weighted means; a few halving steps refine its winner.
 */
final class LeakFit {
  static final Band BAND = new Band(20, 1000);

  /**
   * Above this the shapes differ little and a unit's own middle range has more to say: half the
   * weight (simulated).
   */
  private static final double WEIGHTY_BELOW_HZ = 200;

  private static final double[] HZ =
      IntStream.rangeClosed(BAND.firstIndex(), BAND.lastIndex()).mapToDouble(Grid::hz).toArray();
  private static final double[] WEIGHTS =
      scaled(Arrays.stream(HZ).map(hz -> hz <= WEIGHTY_BELOW_HZ ? 1 : 0.5).toArray());
  private static final int REFINEMENTS = 4;

  private static final List<Fitted> LEAKS = tables(LossShape.leaks());
  private static final List<Fitted> WEAK_DRIVERS = tables(LossShape.weakDrivers());

  private LeakFit() {}

  /** A shape with its levels less their weighted mean, and their weighted sum of squares. */
  private record Fitted(LossShape shape, double[] db, double power) {}

  /**
   * @param deviation aligned, dB, present over 20 Hz–1 kHz
   * @return the leak's shape if a high-pass fits better than any low shelf; else null
   */
  static LossShape leak(Curve deviation) {
    double[] d =
        centred(
            IntStream.rangeClosed(BAND.firstIndex(), BAND.lastIndex())
                .mapToDouble(deviation::at)
                .toArray());
    Fitted leak = best(LEAKS, d);
    return misfit(leak, d) < misfit(best(WEAK_DRIVERS, d), d) ? leak.shape() : null;
  }

  private static Fitted best(List<Fitted> candidates, double[] d) {
    Fitted best = candidates.get(0);
    double least = Double.POSITIVE_INFINITY;
    for (Fitted candidate : candidates) {
      double misfit = misfit(candidate, d);
      if (misfit < least) {
        least = misfit;
        best = candidate;
      }
    }
    return refined(best, d);
  }

  private static Fitted refined(Fitted coarse, double[] d) {
    Fitted best = coarse;
    double share = 0.5;
    for (int step = 0; step < REFINEMENTS; step++) {
      for (LossShape beside : best.shape().beside(share)) {
        Fitted candidate = fitted(beside);
        best = misfit(candidate, d) < misfit(best, d) ? candidate : best;
      }
      share /= 2;
    }
    return best;
  }

  /** Up to Σw·d², which is the same for every shape. */
  private static double misfit(Fitted candidate, double[] d) {
    double[] model = candidate.db();
    double together = 0;
    for (int k = 0; k < d.length; k++) {
      together += WEIGHTS[k] * d[k] * model[k];
    }
    return candidate.power() - 2 * together;
  }

  private static List<Fitted> tables(List<LossShape> shapes) {
    List<Fitted> tables = new ArrayList<>();
    shapes.forEach(shape -> tables.add(fitted(shape)));
    return List.copyOf(tables);
  }

  private static Fitted fitted(LossShape shape) {
    double[] db = centred(Arrays.stream(HZ).map(shape::db).toArray());
    double power = 0;
    for (int k = 0; k < db.length; k++) {
      power += WEIGHTS[k] * db[k] * db[k];
    }
    return new Fitted(shape, db, power);
  }

  private static double[] centred(double[] db) {
    double mean = 0;
    for (int k = 0; k < db.length; k++) {
      mean += WEIGHTS[k] * db[k];
    }
    double offset = mean;
    return Arrays.stream(db).map(level -> level - offset).toArray();
  }

  private static double[] scaled(double[] weights) {
    double sum = Arrays.stream(weights).sum();
    return Arrays.stream(weights).map(weight -> weight / sum).toArray();
  }
}
