package evenpair.demo.earpiece;

import java.util.Arrays;

/**
 * A complex transfer function at a list of frequencies. The operations change it in place and
 * return it, since a capture needs some twenty of them over 65,537 frequencies.
 */
public final class Phasors {
  private final double[] hz;
  private final double[] re;
  private final double[] im;

  private Phasors(double[] hz, double[] re, double[] im) {
    this.hz = hz;
    this.re = re;
    this.im = im;
  }

  /**
   * @return the same real factor at every frequency (hertz, 0 upwards; the array is shared, not
   *     copied)
   */
  public static Phasors constant(double[] hz, double factor) {
    double[] re = new double[hz.length];
    Arrays.fill(re, factor);
    return new Phasors(hz, re, new double[hz.length]);
  }

  /**
   * @return number of frequencies
   */
  public int size() {
    return hz.length;
  }

  /**
   * @return frequency number i, Hz
   */
  public double hz(int i) {
    return hz[i];
  }

  /**
   * @return real part at frequency number i
   */
  public double re(int i) {
    return re[i];
  }

  /**
   * @return imaginary part at frequency number i (time dependence e^(+jωt): a delay has a falling
   *     phase)
   */
  public double im(int i) {
    return im[i];
  }

  /**
   * @return |H|² at frequency number i
   */
  public double power(int i) {
    return re[i] * re[i] + im[i] * im[i];
  }

  /**
   * @return 10·lg |H|² at frequency number i, dB; minus infinity where H is 0
   */
  public double levelDb(int i) {
    return 10 * Math.log10(power(i));
  }

  /**
   * @return argument of H at frequency number i, degrees, −180 … 180
   */
  public double phaseDeg(int i) {
    return Math.toDegrees(Math.atan2(im[i], re[i]));
  }

  /** Multiplies frequency number i by (x + jy). */
  Phasors multiply(int i, double x, double y) {
    double real = re[i] * x - im[i] * y;
    im[i] = re[i] * y + im[i] * x;
    re[i] = real;
    return this;
  }

  /** Divides frequency number i by (x + jy). */
  Phasors divide(int i, double x, double y) {
    double square = x * x + y * y;
    return multiply(i, x / square, -y / square);
  }

  /** Multiplies by a real factor at every frequency. */
  public Phasors scale(double factor) {
    for (int i = 0; i < hz.length; i++) {
      re[i] *= factor;
      im[i] *= factor;
    }
    return this;
  }

  /** Multiplies by e^(−jωτ): a delay of that many seconds. */
  public Phasors delay(double seconds) {
    for (int i = 0; i < hz.length; i++) {
      double angle = -2 * Math.PI * hz[i] * seconds;
      multiply(i, Math.cos(angle), Math.sin(angle));
    }
    return this;
  }

  /** Multiplies by another transfer function at the same frequencies. */
  public Phasors times(Phasors other) {
    for (int i = 0; i < hz.length; i++) {
      multiply(i, other.re[i], other.im[i]);
    }
    return this;
  }

  /** Adds another transfer function at the same frequencies. */
  Phasors add(Phasors other) {
    for (int i = 0; i < hz.length; i++) {
      re[i] += other.re[i];
      im[i] += other.im[i];
    }
    return this;
  }
}
