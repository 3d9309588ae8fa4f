package evenpair.acoustics;

import java.util.List;
import org.apache.commons.math3.complex.Complex;

/**
 * Biquads one after the other at one sample rate.
 *
 * @param filters the sections in order; none gives a straight wire
 * @param rateHz sample rate at which the sections were designed, above 0
 */
public record FilterChain(List<Biquad> filters, double rateHz) {
  /**
   * Steps of Simpson's rule over one grid band; even. The band is 2.9 % wide, so a step is 0.014 %
   * of the frequency.
   */
  private static final int STEPS = 200;

  /**
   * @throws IllegalArgumentException if the sample rate is not above 0
   */
  public FilterChain {
    filters = List.copyOf(filters);
    if (!(rateHz > 0) || !Double.isFinite(rateHz)) {
      throw new IllegalArgumentException("sample rate must be above 0 Hz, was " + rateHz);
    }
  }

  public static FilterChain of(double rateHz, Biquad... filters) {
    return new FilterChain(List.of(filters), rateHz);
  }

  /**
   * @return the product of the sections' responses at a frequency in Hz
   */
  public Complex response(double hz) {
    Complex product = Complex.ONE;
    for (Biquad filter : filters) {
      product = product.multiply(filter.response(hz, rateHz));
    }
    return product;
  }

  /**
   * @return 20·lg|H| at a frequency in Hz, dB
   */
  public double gainDb(double hz) {
    return 20 * Math.log10(response(hz).abs());
  }

  /**
   * @return 10·lg of the mean of |H|² over the grid point's band, (1/(f₂−f₁))·∫|H|² df by Simpson's
   *     rule: what a measurement by power mean must show
   */
  public double powerMeanDb(int gridIndex) {
    return powerMeanDb(Grid.lowerEdge(gridIndex), Grid.upperEdge(gridIndex));
  }

  /**
   * As {@link #powerMeanDb(int)}, over any narrow band; both ends in Hz, below half the sample
   * rate.
   */
  public double powerMeanDb(double fromHz, double toHz) {
    double sum = 0;
    for (int k = 0; k <= STEPS; k++) {
      double weight = k == 0 || k == STEPS ? 1 : k % 2 == 1 ? 4 : 2;
      double magnitude = response(fromHz + (toHz - fromHz) * k / STEPS).abs();
      sum += weight * magnitude * magnitude;
    }
    return 10 * Math.log10(sum / (3 * STEPS));
  }

  /**
   * @return {@link #powerMeanDb(int)} at every grid point whose band ends below half the sample
   *     rate, absent above
   */
  public Curve curve() {
    double[] db = new double[Grid.POINTS];
    for (int i = 0; i < db.length; i++) {
      db[i] = Grid.upperEdge(i) < rateHz / 2 ? powerMeanDb(i) : Double.NaN;
    }
    return Curve.of(db);
  }

  /**
   * @return the signal through every section, from rest; a new array as long as the input
   */
  public double[] filter(double[] input) {
    double[] signal = input.clone();
    for (Biquad filter : filters) {
      signal = filter.filter(signal);
    }
    return signal;
  }
}
