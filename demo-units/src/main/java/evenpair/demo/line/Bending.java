package evenpair.demo.line;

import evenpair.demo.earpiece.Motion;
import evenpair.demo.earpiece.Phasors;
import java.util.Arrays;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * What a moving part radiates beside the linear sound, as a spectrum: from the voltage's spectrum
 * to the excursion, through {@link Motion}'s curves sample by sample, and back. The hard curve is
 * followed at four times the sample rate, whose upper three quarters are then thrown away, so that
 * harmonics beyond half the sample rate are lost instead of folded back.
 *
 * <p>Spectra are packed as JTransforms packs them: the real parts at 0 Hz and at half the sample
 * rate first.
 */
final class Bending {
  private static final int OVERSAMPLING = 4;

  private final double[] binHz;
  private final int length;
  private final DoubleFFT_1D transform;

  /**
   * @param binHz frequencies of the bins, 0 to half the sample rate
   * @param transform of twice (bins − 1) samples
   */
  Bending(double[] binHz, DoubleFFT_1D transform) {
    this.binHz = binHz;
    this.length = 2 * (binHz.length - 1);
    this.transform = transform;
  }

  /**
   * @param voltage packed spectrum of the voltage at the terminals, V; left as it is
   * @return packed spectrum in V, to be multiplied by the dynamic drivers' gain
   */
  double[] of(double[] voltage, Motion motion) {
    double[] excursion = voltage.clone();
    multiply(excursion, motion.excursion(binHz));
    double[] hard = motion.rattles() ? hard(excursion, motion) : new double[length];
    transform.realInverse(excursion, true);
    double[] soft = Arrays.stream(excursion).map(motion::softly).toArray();
    transform.realForward(soft);
    for (int n = 0; n < length; n++) {
      soft[n] += hard[n];
    }
    return soft;
  }

  private double[] hard(double[] excursion, Motion motion) {
    DoubleFFT_1D fine = new DoubleFFT_1D((long) OVERSAMPLING * length);
    double[] samples = Arrays.copyOf(excursion, OVERSAMPLING * length);
    // The place of half the old sample rate, where the excursion has nothing worth keeping.
    samples[1] = 0;
    fine.realInverse(samples, true);
    for (int n = 0; n < samples.length; n++) {
      samples[n] = motion.hard(OVERSAMPLING * samples[n]) / OVERSAMPLING;
    }
    fine.realForward(samples);
    double[] hard = Arrays.copyOf(samples, length);
    hard[1] = 0;
    multiply(hard, motion.rattling(binHz));
    return hard;
  }

  /** Multiplies a packed spectrum by a transfer function at its bins. */
  static void multiply(double[] spectrum, Phasors response) {
    int last = response.size() - 1;
    spectrum[0] *= response.re(0);
    spectrum[1] *= response.re(last);
    for (int k = 1; k < last; k++) {
      double x = response.re(k);
      double y = response.im(k);
      double real = spectrum[2 * k] * x - spectrum[2 * k + 1] * y;
      spectrum[2 * k + 1] = spectrum[2 * k] * y + spectrum[2 * k + 1] * x;
      spectrum[2 * k] = real;
    }
  }
}
