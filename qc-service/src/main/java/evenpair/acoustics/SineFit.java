package evenpair.acoustics;

import java.util.Arrays;
import java.util.Optional;
import org.apache.commons.math3.linear.Array2DRowRealMatrix;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.DecompositionSolver;
import org.apache.commons.math3.linear.LUDecomposition;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * A sine fitted to samples by least squares in four parameters: x(t) ≈ A·cos(2πf·t + φ) + C, t = 0
 * at the first sample.
 *
 * <p>Source: IEEE Std 1057, four-parameter sine fit (from memory): with f fixed the other three are
 * linear; a fourth column, the derivative by frequency, gives the next change of f; repeated until
 * f stands still. Here time runs from the middle of the record and the fourth column is scaled to
 * the others' size, so that the 4×4 normal equations stay well conditioned.
 *
 * @param amplitude A, peak re full scale, not negative
 * @param frequencyHz f in hertz
 * @param phase φ in radians, −π … π, at the first sample
 * @param offset C re full scale
 * @param residualRms root mean square of what the sine leaves over (harmonics, noise, hum), re full
 *     scale
 */
public record SineFit(
    double amplitude, double frequencyHz, double phase, double offset, double residualRms) {
  private static final int MOST_ROUNDS = 60;

  /**
   * Change of phase at the record's ends, radians, below which f stands still: far below what float
   * samples resolve.
   */
  private static final double STANDS_STILL = 1e-10;

  private static final int LEAST_SAMPLES = 8;

  /**
   * −180 dB re full scale, under the last bit of a 24-bit converter by 35 dB: below it only
   * rounding is left.
   */
  private static final double LEAST_AMPLITUDE = 1e-9;

  /**
   * Fits with the spectrum's largest peak as the first guess of the frequency.
   *
   * @return empty if no sine can be found: fewer than 8 samples, silence or a constant, or a fit
   *     that does not settle. Noise alone may give a fit: {@link #distortionAndNoise()} then shows
   *     that it explains nothing
   */
  public static Optional<SineFit> of(Samples samples) {
    return samples.values().length < LEAST_SAMPLES
        ? Optional.empty()
        : of(samples, spectralPeak(samples));
  }

  /**
   * Fits from a first guess.
   *
   * @param nearHz first guess of the frequency in hertz; must be right to about half a period over
   *     the whole record
   * @return empty if the fit does not settle between 0 Hz and half the sample rate
   */
  public static Optional<SineFit> of(Samples samples, double nearHz) {
    float[] x = samples.values();
    if (x.length < LEAST_SAMPLES || !(nearHz > 0)) {
      return Optional.empty();
    }
    double omega = 2 * Math.PI * nearHz / samples.rateHz();
    double[] linear = leastSquares(x, omega, new double[3]);
    for (int round = 0; round < MOST_ROUNDS; round++) {
      double amplitude = Math.hypot(linear[0], linear[1]);
      if (!(amplitude > LEAST_AMPLITUDE && omega > 0 && omega < Math.PI)) {
        return Optional.empty();
      }
      linear =
          leastSquares(x, omega, new double[] {linear[0] / amplitude, linear[1] / amplitude, 0, 0});
      double endPhaseChange = linear[3] / amplitude;
      omega += endPhaseChange / halfLength(x);
      if (Math.abs(endPhaseChange) < STANDS_STILL) {
        return Optional.of(result(samples, omega, linear));
      }
    }
    return Optional.empty();
  }

  /**
   * @return distortion and noise together: residual r.m.s. ÷ r.m.s. of the sine, a ratio (0.03 is 3
   *     %)
   */
  public double distortionAndNoise() {
    return residualRms * Math.sqrt(2) / amplitude;
  }

  /**
   * One round: x on cos, sin and 1, and, if the last round's direction is given, on the derivative
   * by frequency too.
   *
   * @param last its length is the number of columns; the first two are the last round's a and b,
   *     scaled to unit length
   * @return a, b, C (and amplitude times the change of phase at the record's end); NaN where the
   *     columns are not independent
   */
  private static double[] leastSquares(float[] x, double omega, double[] last) {
    double[][] normal = new double[last.length][last.length];
    double[] right = new double[last.length];
    double middle = halfLength(x);
    double[] row = new double[4];
    for (int n = 0; n < x.length; n++) {
      double t = n - middle;
      row[0] = Math.cos(omega * t);
      row[1] = Math.sin(omega * t);
      row[2] = 1;
      row[3] = t / middle * (last[1] * row[0] - last[0] * row[1]);
      accumulate(normal, right, row, x[n]);
    }
    DecompositionSolver solver =
        new LUDecomposition(new Array2DRowRealMatrix(normal, false)).getSolver();
    if (!solver.isNonSingular()) {
      Arrays.fill(right, Double.NaN);
      return right;
    }
    return solver.solve(new ArrayRealVector(right, false)).toArray();
  }

  private static void accumulate(double[][] normal, double[] right, double[] row, double value) {
    for (int i = 0; i < right.length; i++) {
      right[i] += row[i] * value;
      for (int j = 0; j < right.length; j++) {
        normal[i][j] += row[i] * row[j];
      }
    }
  }

  private static SineFit result(Samples samples, double omega, double[] linear) {
    float[] x = samples.values();
    double middle = halfLength(x);
    double squares = 0;
    for (int n = 0; n < x.length; n++) {
      double t = n - middle;
      double left =
          x[n] - linear[0] * Math.cos(omega * t) - linear[1] * Math.sin(omega * t) - linear[2];
      squares += left * left;
    }
    // a·cos(ωt) + b·sin(ωt) = A·cos(ωt + φ) with φ = atan2(−b, a); then from the middle back to the
    // first sample.
    double phase = Math.atan2(-linear[1], linear[0]) - omega * middle;
    return new SineFit(
        Math.hypot(linear[0], linear[1]),
        omega * samples.rateHz() / (2 * Math.PI),
        Math.IEEEremainder(phase, 2 * Math.PI),
        linear[2],
        Math.sqrt(squares / x.length));
  }

  /**
   * Peak of the Hann-weighted, zero-padded spectrum without its mean; between bins by a parabola
   * through the three dB values.
   */
  private static double spectralPeak(Samples samples) {
    float[] x = samples.values();
    int size = 2 * Integer.highestOneBit(x.length);
    double[] spectrum = new double[size];
    double mean = mean(x);
    for (int n = 0; n < x.length; n++) {
      spectrum[n] = (x[n] - mean) * (0.5 - 0.5 * Math.cos(2 * Math.PI * (n + 0.5) / x.length));
    }
    new DoubleFFT_1D(size).realForward(spectrum);
    int peak = 1;
    for (int bin = 2; bin < size / 2; bin++) {
      if (power(spectrum, bin) > power(spectrum, peak)) {
        peak = bin;
      }
    }
    return (peak + parabolaOffset(spectrum, peak)) * samples.rateHz() / size;
  }

  private static double parabolaOffset(double[] spectrum, int peak) {
    if (peak < 2 || peak > spectrum.length / 2 - 2) {
      return 0;
    }
    double before = Math.log(power(spectrum, peak - 1) + Double.MIN_NORMAL);
    double at = Math.log(power(spectrum, peak) + Double.MIN_NORMAL);
    double after = Math.log(power(spectrum, peak + 1) + Double.MIN_NORMAL);
    double curvature = before - 2 * at + after;
    return curvature < 0 ? 0.5 * (before - after) / curvature : 0;
  }

  private static double power(double[] spectrum, int bin) {
    return spectrum[2 * bin] * spectrum[2 * bin] + spectrum[2 * bin + 1] * spectrum[2 * bin + 1];
  }

  private static double mean(float[] x) {
    double sum = 0;
    for (float value : x) {
      sum += value;
    }
    return sum / x.length;
  }

  private static double halfLength(float[] x) {
    return (x.length - 1) / 2.0;
  }
}
