package evenpair.acoustics;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;

/**
 * From a deconvolved impulse response to the harmonics at the excitation frequencies of the grid.
 */
final class HarmonicAnalyser {
  private static final int FIRST_HIGH_ORDER = 10;
  private static final int LAST_HIGH_ORDER = 25;
  private static final int LEAST_HIGH_ORDERS = 4;
  private static final double LOWEST_HZ = 50;
  private static final double HIGHEST_OF_LIMIT = 0.9;
  private static final double HALF_BAND = Math.pow(10, 1 / 160.0);

  private final Sweep sweep;
  private final InverseFilter inverse;
  private final BandPower inversePower;
  private final List<HarmonicWindow> low;
  private final List<HarmonicWindow> high;

  HarmonicAnalyser(Sweep sweep, InverseFilter inverse, BandPower inversePower) {
    this.sweep = sweep;
    this.inverse = inverse;
    this.inversePower = inversePower;
    low = windows(2, 5);
    high = windows(FIRST_HIGH_ORDER, LAST_HIGH_ORDER);
  }

  /**
   * @param impulse the circular impulse response
   * @param peak index of the linear arrival
   * @param level the linear part, dB
   * @param noise the lead-in's power density at the grid points
   */
  Distortion measure(double[] impulse, int peak, Curve level, double[] noise) {
    List<Curve> harmonics = new ArrayList<>();
    List<Curve> floors = new ArrayList<>();
    for (HarmonicWindow window : low) {
      double[] power = new double[Grid.POINTS];
      double[] floor = new double[Grid.POINTS];
      addOrder(window, impulse, peak, noise, power, floor, new int[Grid.POINTS]);
      harmonics.add(relative(power, level));
      floors.add(relative(floor, level));
    }
    double[] power = new double[Grid.POINTS];
    double[] floor = new double[Grid.POINTS];
    int[] orders = new int[Grid.POINTS];
    for (HarmonicWindow window : high) {
      addOrder(window, impulse, peak, noise, power, floor, orders);
    }
    for (int i = 0; i < Grid.POINTS; i++) {
      if (orders[i] < LEAST_HIGH_ORDERS) {
        power[i] = 0;
        floor[i] = 0;
      }
    }
    return new Distortion(harmonics, floors, relative(power, level), relative(floor, level));
  }

  private void addOrder(
      HarmonicWindow window,
      double[] impulse,
      int peak,
      double[] noise,
      double[] power,
      double[] floor,
      int[] orders) {
    BandPower spectrum = window.power(impulse, peak);
    for (int i = Grid.nearest(LOWEST_HZ); i < Grid.POINTS; i++) {
      double hz = window.order() * Grid.hz(i);
      if (hz >= HIGHEST_OF_LIMIT * Math.min(sweep.toHz(), sweep.rateHz() / 2)) {
        return;
      }
      double cut = Math.pow(inverse.lowCut(hz).abs(), 2);
      power[i] += spectrum.mean(hz / HALF_BAND, hz * HALF_BAND) / cut;
      double gain = inversePower.mean(hz / HALF_BAND, hz * HALF_BAND);
      floor[i] += noise[Grid.nearest(hz)] * gain * window.energy() / cut;
      orders[i]++;
    }
  }

  /** dB re the fundamental; absent where there is no power or no fundamental. */
  private static Curve relative(double[] power, Curve level) {
    return Curve.of(
        IntStream.range(0, Grid.POINTS)
            .mapToDouble(
                i ->
                    power[i] > 0 && level.has(i)
                        ? 10 * Math.log10(power[i]) - level.at(i)
                        : Double.NaN)
            .toArray());
  }

  private List<HarmonicWindow> windows(int from, int to) {
    return IntStream.rangeClosed(from, to).mapToObj(n -> new HarmonicWindow(sweep, n)).toList();
  }
}
