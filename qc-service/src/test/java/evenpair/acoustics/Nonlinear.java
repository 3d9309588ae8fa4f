package evenpair.acoustics;

import java.util.function.DoubleUnaryOperator;

/**
 * The standard sweep through something that is not linear, rendered at eight times the rate and
 * then reduced, so that nothing folds back into the band.
 */
final class Nonlinear {
  static final double FS = 48_000;
  private static final int OVER = 8;
  private static final double LEAD_SECONDS = 0.35;
  private static final Sweep SWEEP = Sweep.standard(FS);
  private static final Sweep FAST =
      new Sweep(10, SWEEP.toHz(), 1.2, OVER * FS, 0.01, LEAD_SECONDS, 0.3, SWEEP.amplitude());

  private Nonlinear() {}

  /** The sweep with peak A through a curve; read again at the stimulus' own peak, 6 dB down. */
  static double[] memoryless(DoubleUnaryOperator curve, double peak) {
    double[] x = sweep(peak);
    for (int n = 0; n < x.length; n++) {
      x[n] = curve.applyAsDouble(x[n]) * SWEEP.amplitude() / peak / 2;
    }
    return reduced(x);
  }

  /**
   * An earpiece with a flat response whose low-frequency driver hits something at the top of its
   * excursion and is thrown back, always on the same side. Excursion: second-order low-pass at 300
   * Hz, so that only low frequencies reach the contact; the coupler hears what is missing of it.
   *
   * @param contact excursion at which the driver is stopped, re its largest; above 1.1 it never is
   */
  static double[] buzzing(double contact) {
    double[] sound = sweep(1);
    double[] excursion = Biquad.lowPass(300, 0.7, OVER * FS).filter(sound);
    for (int n = 0; n < sound.length; n++) {
      double beyond = Math.max(0, excursion[n] - contact);
      sound[n] = (sound[n] - 2 * beyond) * SWEEP.amplitude();
    }
    return reduced(sound);
  }

  private static double[] sweep(double peak) {
    float[] active = SweepSignal.active(FAST);
    double[] x = new double[(int) ((LEAD_SECONDS + 1.5) * FS) * OVER];
    int lead = (int) (LEAD_SECONDS * FS) * OVER;
    for (int n = 0; n < active.length; n++) {
      x[lead + n] = active[n] / FAST.amplitude() * peak;
    }
    return x;
  }

  /**
   * Every eighth value behind a windowed sinc (Blackman, 64 periods): flat to 21 kHz, below −70 dB
   * from 27 kHz on.
   */
  private static double[] reduced(double[] fast) {
    double[] taps = taps();
    int reach = taps.length / 2;
    double[] slow = new double[fast.length / OVER];
    for (int n = 0; n < slow.length; n++) {
      int from = Math.max(-reach, -n * OVER);
      int to = Math.min(reach, fast.length - 1 - n * OVER);
      for (int k = from; k <= to; k++) {
        slow[n] += taps[k + reach] * fast[n * OVER + k];
      }
    }
    return slow;
  }

  private static double[] taps() {
    int reach = 32 * OVER;
    double[] taps = new double[2 * reach + 1];
    double sum = 0;
    for (int k = -reach; k <= reach; k++) {
      double x = k / (double) OVER;
      double turn = Math.PI * k / reach;
      double window = 0.42 + 0.5 * Math.cos(turn) + 0.08 * Math.cos(2 * turn);
      taps[k + reach] = window * (k == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
      sum += taps[k + reach];
    }
    for (int k = 0; k < taps.length; k++) {
      taps[k] /= sum;
    }
    return taps;
  }
}
