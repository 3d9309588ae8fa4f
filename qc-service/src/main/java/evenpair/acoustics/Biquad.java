package evenpair.acoustics;

import org.apache.commons.math3.complex.Complex;

/**
 * A second-order filter y[n] = b0·x[n] + b1·x[n−1] + b2·x[n−2] − a1·y[n−1] − a2·y[n−2], normalised
 * to a0 = 1.
 *
 * <p>The factories follow the Audio EQ Cookbook (R. Bristow-Johnson, W3C Note, 8 June 2021), with α
 * = sin ω0/(2Q), ω0 = 2π·f0/fs and A = 10^(dB/40).
 *
 * @param b0 feed-forward, the present sample
 * @param b1 feed-forward, one sample back
 * @param b2 feed-forward, two samples back
 * @param a1 feedback, one sample back
 * @param a2 feedback, two samples back
 */
public record Biquad(double b0, double b1, double b2, double a1, double a2) {
  /**
   * @throws IllegalArgumentException if a coefficient is not finite
   */
  public Biquad {
    if (!Double.isFinite(b0 + b1 + b2 + a1 + a2)) {
      throw new IllegalArgumentException("biquad coefficients must be finite");
    }
  }

  /**
   * A peak (or dip) of exactly {@code gainDb} at its centre.
   *
   * @param hz centre f0, above 0 and below fs/2
   * @param gainDb gain at the centre, dB
   * @param q quality factor, above 0
   * @param rateHz sample rate fs
   * @throws IllegalArgumentException if a value is out of its range
   */
  public static Biquad peak(double hz, double gainDb, double q, double rateHz) {
    double w = angle(hz, q, rateHz);
    double a = root(gainDb);
    double alpha = Math.sin(w) / (2 * q);
    double c = -2 * Math.cos(w);
    return normalised(1 + alpha * a, c, 1 - alpha * a, 1 + alpha / a, c, 1 - alpha / a);
  }

  /**
   * A low shelf: {@code gainDb} at 0 Hz, half of it (in dB) at {@code hz}, none at high
   * frequencies. Ranges as for a peak.
   */
  public static Biquad lowShelf(double hz, double gainDb, double q, double rateHz) {
    return shelf(angle(hz, q, rateHz), gainDb, q, 1);
  }

  /**
   * A high shelf: none at 0 Hz, half of {@code gainDb} (in dB) at {@code hz}, all of it at fs/2.
   * Ranges as for a peak.
   */
  public static Biquad highShelf(double hz, double gainDb, double q, double rateHz) {
    return shelf(angle(hz, q, rateHz), gainDb, q, -1);
  }

  /** A second-order low-pass, |H(f0)| = Q; Q = 1/√2 is Butterworth. Ranges as for a peak. */
  public static Biquad lowPass(double hz, double q, double rateHz) {
    double w = angle(hz, q, rateHz);
    double alpha = Math.sin(w) / (2 * q);
    // 1 − cos ω as 2·sin²(ω/2): the difference itself loses digits at a few hertz
    double b = 2 * Math.pow(Math.sin(w / 2), 2);
    return normalised(b / 2, b, b / 2, 1 + alpha, -2 * Math.cos(w), 1 - alpha);
  }

  /** A second-order high-pass, |H(f0)| = Q; Q = 1/√2 is Butterworth. Ranges as for a peak. */
  public static Biquad highPass(double hz, double q, double rateHz) {
    double w = angle(hz, q, rateHz);
    double alpha = Math.sin(w) / (2 * q);
    double b = 1 + Math.cos(w);
    return normalised(b / 2, -b, b / 2, 1 + alpha, -2 * Math.cos(w), 1 - alpha);
  }

  /** A filter that scales by {@code gainDb} and does nothing else. */
  public static Biquad gain(double gainDb) {
    return new Biquad(Math.pow(10, gainDb / 20), 0, 0, 0, 0);
  }

  /**
   * @param hz frequency, 0 … fs/2
   * @param rateHz sample rate
   * @return H(e^(jω)), ω = 2π·hz/rateHz
   */
  public Complex response(double hz, double rateHz) {
    double w = 2 * Math.PI * hz / rateHz;
    Complex back = new Complex(Math.cos(w), -Math.sin(w));
    Complex twice = back.multiply(back);
    Complex above = back.multiply(b1).add(twice.multiply(b2)).add(b0);
    Complex below = back.multiply(a1).add(twice.multiply(a2)).add(1);
    return above.divide(below);
  }

  /**
   * @return 20·lg|H| at a frequency, dB; −∞ at a zero on the unit circle
   */
  public double gainDb(double hz, double rateHz) {
    return 20 * Math.log10(response(hz, rateHz).abs());
  }

  /**
   * @return the filtered signal, as long as the input, from rest; a new array
   */
  public double[] filter(double[] input) {
    double[] output = new double[input.length];
    double s1 = 0;
    double s2 = 0;
    for (int n = 0; n < input.length; n++) {
      double x = input[n];
      double y = b0 * x + s1;
      s1 = b1 * x - a1 * y + s2;
      s2 = b2 * x - a2 * y;
      output[n] = y;
    }
    return output;
  }

  /**
   * @param side 1 for the low shelf, −1 for the high one: the sign of every cos ω term of the
   *     cookbook
   */
  private static Biquad shelf(double w, double gainDb, double q, int side) {
    double a = root(gainDb);
    double c = side * Math.cos(w);
    double slope = 2 * Math.sqrt(a) * Math.sin(w) / (2 * q);
    return normalised(
        a * ((a + 1) - (a - 1) * c + slope),
        side * 2 * a * ((a - 1) - (a + 1) * c),
        a * ((a + 1) - (a - 1) * c - slope),
        (a + 1) + (a - 1) * c + slope,
        side * -2 * ((a - 1) + (a + 1) * c),
        (a + 1) + (a - 1) * c - slope);
  }

  private static Biquad normalised(
      double b0, double b1, double b2, double a0, double a1, double a2) {
    return new Biquad(b0 / a0, b1 / a0, b2 / a0, a1 / a0, a2 / a0);
  }

  private static double root(double gainDb) {
    if (!Double.isFinite(gainDb)) {
      throw new IllegalArgumentException("gain must be finite, was " + gainDb + " dB");
    }
    return Math.pow(10, gainDb / 40);
  }

  private static double angle(double hz, double q, double rateHz) {
    if (!(hz > 0 && hz < rateHz / 2)) {
      throw new IllegalArgumentException(
          "a filter's frequency must lie between 0 and half of " + rateHz + " Hz, was " + hz);
    }
    if (!(q > 0) || !Double.isFinite(q)) {
      throw new IllegalArgumentException("a filter's Q must be above 0, was " + q);
    }
    return 2 * Math.PI * hz / rateHz;
  }
}
