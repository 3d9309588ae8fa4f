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
  private static final int FIRST = Grid.nearest(50);
  private static final double HIGHEST_OF_LIMIT = 0.9;
  private static final double HALF_BAND = Math.pow(10, 1 / 160.0);

  /** Frequencies stay the same from capture to capture, and so does what depends on them only. */
  private record Order(HarmonicWindow window, int end, double[] cut, double[] floorGain) {}

  private final List<Order> low;
  private final List<Order> high;

  HarmonicAnalyser(Sweep sweep, InverseFilter inverse, BandPower inversePower) {
    low = orders(2, 5, sweep, inverse, inversePower);
    high = orders(FIRST_HIGH_ORDER, LAST_HIGH_ORDER, sweep, inverse, inversePower);
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
    for (Order order : low) {
      Sum one = new Sum();
      one.add(order, impulse, peak, noise);
      harmonics.add(relative(one.power, level));
      floors.add(relative(one.floor, level));
    }
    Sum all = new Sum();
    high.forEach(order -> all.add(order, impulse, peak, noise));
    all.dropWhereFewerThan(LEAST_HIGH_ORDERS);
    return new Distortion(
        harmonics, floors, relative(all.power, level), relative(all.floor, level));
  }

  /** Powers of one order or several, and of the noise in them, at the excitation frequencies. */
  private static final class Sum {
    private final double[] power = new double[Grid.POINTS];
    private final double[] floor = new double[Grid.POINTS];
    private final int[] orders = new int[Grid.POINTS];

    void add(Order order, double[] impulse, int peak, double[] noise) {
      BandPower spectrum = order.window().power(impulse, peak);
      for (int i = FIRST; i < order.end(); i++) {
        double hz = order.window().order() * Grid.hz(i);
        power[i] += spectrum.mean(hz / HALF_BAND, hz * HALF_BAND) / order.cut()[i];
        floor[i] += noise[Grid.nearest(hz)] * order.floorGain()[i];
        orders[i]++;
      }
    }

    void dropWhereFewerThan(int least) {
      for (int i = 0; i < Grid.POINTS; i++) {
        if (orders[i] < least) {
          power[i] = 0;
          floor[i] = 0;
        }
      }
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

  private static List<Order> orders(
      int from, int to, Sweep sweep, InverseFilter inverse, BandPower inversePower) {
    return IntStream.rangeClosed(from, to)
        .mapToObj(n -> order(new HarmonicWindow(sweep, n), sweep, inverse, inversePower))
        .toList();
  }

  private static Order order(
      HarmonicWindow window, Sweep sweep, InverseFilter inverse, BandPower inversePower) {
    double[] cut = new double[Grid.POINTS];
    double[] floorGain = new double[Grid.POINTS];
    double limit = HIGHEST_OF_LIMIT * Math.min(sweep.toHz(), sweep.rateHz() / 2);
    int end = FIRST;
    while (end < Grid.POINTS && window.order() * Grid.hz(end) < limit) {
      double hz = window.order() * Grid.hz(end);
      cut[end] = Math.pow(inverse.lowCut(hz).abs(), 2);
      double gain = inversePower.mean(hz / HALF_BAND, hz * HALF_BAND);
      floorGain[end] = gain * window.energy() / cut[end];
      end++;
    }
    return new Order(window, end, cut, floorGain);
  }
}
