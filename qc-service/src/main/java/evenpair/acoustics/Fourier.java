package evenpair.acoustics;

import org.jtransforms.fft.DoubleFFT_1D;
import pl.edu.icm.jlargearrays.ConcurrencyUtils;

/**
 * Real FFT of one power-of-two length, planned once. Read-only after construction, so any number of
 * threads may share it.
 *
 * <p>Spectra are packed: {@code s[0]} is the value at 0 Hz, {@code s[1]} the one at half the sample
 * rate, and bin k between them stands in {@code s[2k], s[2k+1]} (real, imaginary; X = Σ
 * x·e^(−j2πkn/N)).
 */
final class Fourier {
  static {
    // The library would split one transform over all cores: slower in a service that measures many
    // units at once, and the
    // order of additions, hence the last bit of a stored level, must not depend on the machine.
    ConcurrencyUtils.setNumberOfThreads(1);
  }

  private final int length;
  private final DoubleFFT_1D plan;

  /**
   * @param atLeast smallest length wanted; the next power of two is taken
   */
  Fourier(int atLeast) {
    length = powerOfTwo(atLeast);
    plan = new DoubleFFT_1D(length);
  }

  int length() {
    return length;
  }

  /** Replaces {@link #length()} samples by their packed spectrum. */
  void forward(double[] samples) {
    plan.realForward(samples);
  }

  /**
   * Replaces a packed spectrum by its samples (scaled by 1/N, so that forward and inverse undo each
   * other).
   */
  void inverse(double[] spectrum) {
    plan.realInverse(spectrum, true);
  }

  /**
   * @return |X|² for the bins 0 … N/2 of a packed spectrum
   */
  static double[] power(double[] packed) {
    int half = packed.length / 2;
    double[] power = new double[half + 1];
    power[0] = packed[0] * packed[0];
    power[half] = packed[1] * packed[1];
    for (int k = 1; k < half; k++) {
      power[k] = packed[2 * k] * packed[2 * k] + packed[2 * k + 1] * packed[2 * k + 1];
    }
    return power;
  }

  private static int powerOfTwo(int atLeast) {
    if (atLeast < 2 || atLeast > 1 << 28) {
      throw new IllegalArgumentException(
          "a transform's length must lie in 2 … 2^28, was " + atLeast);
    }
    return atLeast == 2 ? 2 : Integer.highestOneBit(atLeast - 1) << 1;
  }
}
