package evenpair.acoustics;

import org.apache.commons.math3.complex.Complex;

/**
 * The regularised inverse of a stimulus (Kirkeby): G = B·X*·/(|X|² + ε), with ε a millionth of the
 * sweep's own power density inside f1 … f2 and ten times it outside, going over along a half-cosine
 * in log ε.
 *
 * <p>Division alone would cut the band sharply at both ends and ring before the arrival, into the
 * window that must shut out the second harmonic. B is a causal second-order high-pass far below f1:
 * what rings at the low end then rings after the arrival, where the window is long. B is known
 * exactly, and {@link #lowCut} takes it out of the result again.
 *
 * <p>Source: Kirkeby &amp; Nelson, regularised inversion, from memory; the causal low cut is this
 * program's own and proved by the accuracy tests.
 */
final class InverseFilter {
  private static final double INSIDE = 1e-7;
  private static final double OUTSIDE = 10;

  /** Corner of the low cut re f1, and where the regularisation goes over re f1. */
  private static final double LOW_CUT = 0.4;

  private static final double LOW_FROM = 0.05;
  private static final double LOW_TO = 0.2;

  private final Sweep sweep;
  private final Fourier fourier;
  private final double[] packed;

  /**
   * @param sweep the stimulus
   * @param played the signal as played, silences and fades included, not longer than the transform
   * @param fourier of the length to work at
   */
  InverseFilter(Sweep sweep, float[] played, Fourier fourier) {
    this.sweep = sweep;
    this.fourier = fourier;
    packed = new double[fourier.length()];
    for (int n = 0; n < played.length; n++) {
      packed[n] = played[n];
    }
    fourier.forward(packed);
    invert();
  }

  /**
   * Replaces a capture's samples (padded with zeros to the transform's length) by the low-cut
   * impulse response.
   */
  void deconvolve(double[] samples) {
    fourier.forward(samples);
    samples[0] *= packed[0];
    samples[1] *= packed[1];
    for (int k = 2; k < samples.length; k += 2) {
      double re = samples[k] * packed[k] - samples[k + 1] * packed[k + 1];
      samples[k + 1] = samples[k] * packed[k + 1] + samples[k + 1] * packed[k];
      samples[k] = re;
    }
    fourier.inverse(samples);
  }

  /**
   * @return |G|² averaged over bands
   */
  BandPower power() {
    return new BandPower(Fourier.power(packed), sweep.rateHz() / fourier.length());
  }

  /**
   * @return B(f), the low cut that is still in a deconvolved response
   */
  Complex lowCut(double hz) {
    Complex s = new Complex(0, hz / (LOW_CUT * sweep.fromHz()));
    return s.multiply(s).divide(s.multiply(s).add(s.multiply(Math.sqrt(2))).add(1));
  }

  private void invert() {
    int half = packed.length / 2;
    packed[0] = 0; // the low cut has no gain at 0 Hz
    packed[1] = inverse(half, new Complex(packed[1], 0)).getReal();
    for (int k = 1; k < half; k++) {
      Complex inverse = inverse(k, new Complex(packed[2 * k], packed[2 * k + 1]));
      packed[2 * k] = inverse.getReal();
      packed[2 * k + 1] = inverse.getImaginary();
    }
  }

  private Complex inverse(int bin, Complex x) {
    double hz = bin * sweep.rateHz() / packed.length;
    double power = x.getReal() * x.getReal() + x.getImaginary() * x.getImaginary();
    return x.conjugate().multiply(lowCut(hz)).divide(power + regularisation(hz));
  }

  /** ε at a frequency; the sweep's density is a²·fs²·L/(4f). */
  private double regularisation(double hz) {
    double inBand = Math.max(sweep.fromHz(), Math.min(sweep.toHz(), hz));
    double density = square(sweep.amplitude() * sweep.rateHz()) * sweep.rate() / (4 * inBand);
    double low = rise(hz, LOW_FROM * sweep.fromHz(), LOW_TO * sweep.fromHz());
    double high = rise(hz, sweep.usableToHz(), sweep.toHz());
    double inside = low * (1 - high);
    return density * OUTSIDE * Math.pow(INSIDE / OUTSIDE, inside);
  }

  /** Half-cosine from 0 at {@code from} to 1 at {@code to}, along log frequency. */
  private static double rise(double hz, double from, double to) {
    double place = Math.log(hz / from) / Math.log(to / from);
    return 0.5 - 0.5 * Math.cos(Math.PI * Math.max(0, Math.min(1, place)));
  }

  private static double square(double x) {
    return x * x;
  }
}
