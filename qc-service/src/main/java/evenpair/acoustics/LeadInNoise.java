package evenpair.acoustics;

/**
 * The noise of the silence before the sweep: mean of Hann-windowed periodograms of 200 ms that
 * overlap by half, then averaged over a third of an octave, and over 20 Hz at least.
 */
final class LeadInNoise {
  private static final double SEGMENT_SECONDS = 0.200;
  private static final double LEAST_WIDTH_HZ = 20;
  private static final double HALF_THIRD_OCTAVE = Math.pow(10, 1 / 20.0);

  /**
   * Power of the rounding of 24-bit samples, q²/12 with q = 2^−23: a lead-in of digital zeros is
   * taken as this noisy, since no recording is better and its signal-to-noise would be no number.
   */
  private static final double LEAST_POWER = Math.pow(2, -46) / 12;

  private final double rateHz;
  private final double[] hann;
  private final double energy;
  private final Fourier fourier;

  LeadInNoise(double rateHz) {
    this.rateHz = rateHz;
    hann = new double[(int) Math.round(SEGMENT_SECONDS * rateHz)];
    double sum = 0;
    for (int n = 0; n < hann.length; n++) {
      hann[n] = 0.5 - 0.5 * Math.cos(2 * Math.PI * (n + 0.5) / hann.length);
      sum += hann[n] * hann[n];
    }
    energy = sum;
    fourier = new Fourier(hann.length);
  }

  /**
   * @param samples a capture
   * @param end how many of its first samples hold noise only; 200 ms at least
   * @return the noise' power density at the grid points, in full scale² per sample (σ² for white
   *     noise)
   */
  double[] density(float[] samples, int end) {
    double[] sum = new double[fourier.length() / 2 + 1];
    int segments = 0;
    for (int start = end - hann.length; start >= 0; start -= hann.length / 2) {
      add(samples, start, sum);
      segments++;
    }
    BandPower power = new BandPower(sum, rateHz / fourier.length());
    double[] density = new double[Grid.POINTS];
    for (int i = 0; i < density.length; i++) {
      density[i] = Math.max(LEAST_POWER, around(power, Grid.hz(i)) / segments);
    }
    return density;
  }

  private void add(float[] samples, int start, double[] sum) {
    double mean = 0;
    for (int n = 0; n < hann.length; n++) {
      mean += samples[start + n];
    }
    mean /= hann.length;
    double[] segment = new double[fourier.length()];
    for (int n = 0; n < hann.length; n++) {
      segment[n] = hann[n] * (samples[start + n] - mean);
    }
    fourier.forward(segment);
    double[] power = Fourier.power(segment);
    for (int k = 0; k < sum.length; k++) {
      sum[k] += power[k] / energy;
    }
  }

  private double around(BandPower power, double hz) {
    double from = Math.max(0, Math.min(hz / HALF_THIRD_OCTAVE, hz - LEAST_WIDTH_HZ / 2));
    double to = Math.max(hz * HALF_THIRD_OCTAVE, hz + LEAST_WIDTH_HZ / 2);
    return power.mean(from, Math.min(to, rateHz / 2));
  }
}
