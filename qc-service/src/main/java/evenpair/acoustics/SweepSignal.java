package evenpair.acoustics;

/**
 * The stimulus as it is played, sample by sample: silence, x(t) = a·sin(2π·f1·L·e^(t/L)) with
 * half-cosine fades, silence.
 *
 * <p>{@link StrictMath} keeps the samples, and so their digest, the same on every machine.
 */
public final class SweepSignal {
  private SweepSignal() {}

  /**
   * @param sweep the parameters
   * @return the signal re full scale at {@code sweep.rateHz()}, both silences included; the 32-bit
   *     floats are what a WAV of the stimulus carries, hence also what deconvolution divides by
   */
  public static float[] render(Sweep sweep) {
    int lead = count(sweep.leadSeconds(), sweep);
    float[] active = active(sweep);
    float[] whole = new float[lead + active.length + count(sweep.tailSeconds(), sweep)];
    System.arraycopy(active, 0, whole, lead, active.length);
    return whole;
  }

  /**
   * @return the sweep alone, fades included, without its silences
   */
  static float[] active(Sweep sweep) {
    double fade = count(sweep.fadeSeconds(), sweep);
    float[] samples = new float[count(sweep.seconds(), sweep)];
    double cycles = sweep.fromHz() * sweep.rate();
    for (int n = 0; n < samples.length; n++) {
      double phase = 2 * Math.PI * cycles * StrictMath.exp(n / sweep.rateHz() / sweep.rate());
      int toNearerEnd = Math.min(n, samples.length - 1 - n);
      samples[n] = (float) (sweep.amplitude() * fade(toNearerEnd, fade) * StrictMath.sin(phase));
    }
    return samples;
  }

  /**
   * @param seconds since the sweep's first sample, 0 … T
   * @return the frequency being played then, Hz: f1·e^(t/L)
   */
  static double frequencyAt(Sweep sweep, double seconds) {
    return sweep.fromHz() * Math.exp(seconds / sweep.rate());
  }

  static int count(double seconds, Sweep sweep) {
    return (int) Math.round(seconds * sweep.rateHz());
  }

  private static double fade(int samplesFromEnd, double length) {
    return samplesFromEnd >= length
        ? 1
        : 0.5 - 0.5 * StrictMath.cos(Math.PI * samplesFromEnd / length);
  }
}
