package evenpair.acoustics;

/**
 * Frequency weightings A and C by their poles, 0 dB at 1 kHz.
 *
 * <p>Source: IEC 61672-1, Annex E (pole frequencies from f_r = 1000 Hz, f_L = 10^1.5 Hz, f_H =
 * 10^3.9 Hz, f_A = 10^2.45 Hz and half power at f_L and f_H), from memory; checked against the
 * standard's table.
 */
public enum Weighting {
  /** 20·lg[f4²·f⁴ / ((f²+f1²)·√(f²+f2²)·√(f²+f3²)·(f²+f4²))], less its value at 1 kHz. */
  A {
    @Override
    double gain(double f) {
      double f2 = f * f;
      return f2
          * f2
          * F4
          * F4
          / ((f2 + F1 * F1) * Math.hypot(f, F2) * Math.hypot(f, F3) * (f2 + F4 * F4));
    }
  },
  /** 20·lg[f4²·f² / ((f²+f1²)·(f²+f4²))], less its value at 1 kHz. */
  C {
    @Override
    double gain(double f) {
      double f2 = f * f;
      return f2 * F4 * F4 / ((f2 + F1 * F1) * (f2 + F4 * F4));
    }
  };

  private static final double REFERENCE_HZ = 1000;
  private static final double F1 = 20.598997057618;
  private static final double F2 = 107.652648643046;
  private static final double F3 = 737.862230736290;
  private static final double F4 = 12194.217147998;

  abstract double gain(double hz);

  /**
   * @param hz frequency, above 0
   * @return the weighting there, dB
   */
  public double db(double hz) {
    return 20 * Math.log10(gain(hz) / gain(REFERENCE_HZ));
  }

  /**
   * @return the factor on power, 10^(db/10); 0 at 0 Hz
   */
  public double power(double hz) {
    return Math.pow(gain(hz) / gain(REFERENCE_HZ), 2);
  }
}
