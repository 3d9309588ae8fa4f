package evenpair.demo.line;

import evenpair.acoustics.FilterChain;
import evenpair.acoustics.Grid;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Earpiece;
import evenpair.demo.earpiece.Mounting;
import evenpair.demo.earpiece.Phasors;
import org.apache.commons.math3.complex.Complex;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * The golden response of a design in one tuning: what a perfect unit gives at nominal mounting. A
 * tuning of the USB cable is golden(plain) + its filters' gains + its overall gain.
 *
 * @param levelDb 241 levels, dB SPL at the design's drive, power mean over each grid point's band
 * @param phaseDeg 241 phases relative to the response's arrival (the largest value of its impulse
 *     response), −180 … 180
 */
public record Golden(double[] levelDb, double[] phaseDeg) {
  /** Steps of Simpson's rule over one grid band of 2.9 %; even. */
  private static final int STEPS = 32;

  private static final int IMPULSE_SAMPLES = 8192;
  private static final double IMPULSE_RATE_HZ = 48_000;

  /**
   * @return the golden response of the tuning that the cable carries
   */
  public static Golden of(Design design, Cable cable) {
    double[] level = new double[Grid.POINTS];
    double[] phase = new double[Grid.POINTS];
    Phasors atGrid = design.nominal().response(Grid.frequencies(), Mounting.NOMINAL);
    double arrival = arrivalSeconds(design, cable);
    Earpiece nominal = design.nominal();
    double driveDb = driveDb(design);
    for (int i = 0; i < level.length; i++) {
      int point = i;
      level[i] =
          driveDb
              + bandMeanDb(nominal, i)
              + cable.filters().map(chain -> chain.powerMeanDb(point)).orElse(0.0);
      double turned = Math.toRadians(atGrid.phaseDeg(i)) + 2 * Math.PI * Grid.hz(i) * arrival;
      turned +=
          cable.filters().map(chain -> chain.response(Grid.hz(point)).getArgument()).orElse(0.0);
      phase[i] = Math.toDegrees(Math.atan2(Math.sin(turned), Math.cos(turned)));
    }
    return new Golden(level, phase);
  }

  /**
   * @return level of 1 Pa/V at the design's drive, dB SPL
   */
  static double driveDb(Design design) {
    return 20 * Math.log10(design.millivoltsRms() / 1000 / 20e-6);
  }

  /** 10·lg of the mean of |H|² over the grid point's band by Simpson's rule, dB re 1 Pa/V. */
  static double bandMeanDb(Earpiece earpiece, int index) {
    double from = Grid.lowerEdge(index);
    double[] hz = new double[STEPS + 1];
    for (int k = 0; k <= STEPS; k++) {
      hz[k] = from + (Grid.upperEdge(index) - from) * k / STEPS;
    }
    Phasors response = earpiece.response(hz, Mounting.NOMINAL);
    double sum = 0;
    for (int k = 0; k <= STEPS; k++) {
      sum += (k == 0 || k == STEPS ? 1 : k % 2 == 1 ? 4 : 2) * response.power(k);
    }
    return 10 * Math.log10(sum / (3 * STEPS));
  }

  /**
   * Where the impulse response is largest, s; a sample's accuracy is enough since polarity is
   * looked for within ± 0.5 ms.
   */
  private static double arrivalSeconds(Design design, Cable cable) {
    int half = IMPULSE_SAMPLES / 2;
    double[] hz = new double[half + 1];
    for (int k = 0; k <= half; k++) {
      hz[k] = k * IMPULSE_RATE_HZ / IMPULSE_SAMPLES;
    }
    Phasors response = design.nominal().response(hz, Mounting.NOMINAL);
    double[] impulse = new double[IMPULSE_SAMPLES];
    for (int k = 1; k < half; k++) {
      Complex filter = filterAt(cable, hz[k]);
      Complex product = new Complex(response.re(k), response.im(k)).multiply(filter);
      impulse[2 * k] = product.getReal();
      impulse[2 * k + 1] = product.getImaginary();
    }
    new DoubleFFT_1D(IMPULSE_SAMPLES).realInverse(impulse, true);
    int largest = 0;
    for (int n = 1; n < IMPULSE_SAMPLES; n++) {
      largest = Math.abs(impulse[n]) > Math.abs(impulse[largest]) ? n : largest;
    }
    // What lies in the second half came before time zero.
    return (largest < half ? largest : largest - IMPULSE_SAMPLES) / IMPULSE_RATE_HZ;
  }

  private static Complex filterAt(Cable cable, double hz) {
    FilterChain chain = cable.filters().orElse(null);
    return chain == null ? Complex.ONE : chain.response(hz);
  }
}
