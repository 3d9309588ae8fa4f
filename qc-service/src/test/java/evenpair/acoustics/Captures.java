package evenpair.acoustics;

import java.util.Random;

/** Renders captures of a sweep through a known path, as a rig without faults would record them. */
final class Captures {
  final Sweep sweep;
  final float[] played;

  Captures(double rateHz) {
    this(Sweep.standard(rateHz));
  }

  Captures(Sweep sweep) {
    this.sweep = sweep;
    played = SweepSignal.render(sweep);
  }

  /**
   * The sweep begins after {@code start} seconds, goes through the chain, and 300 ms are recorded
   * after its end.
   */
  double[] through(FilterChain chain, double start) {
    float[] active = SweepSignal.active(sweep);
    int at = (int) Math.round(start * sweep.rateHz());
    double[] signal = new double[at + active.length + (int) Math.round(0.3 * sweep.rateHz())];
    for (int n = 0; n < active.length; n++) {
      signal[at + n] = active[n];
    }
    return chain.filter(signal);
  }

  /** White Gaussian noise so many dB below the capture's own r.m.s. while the sweep plays. */
  double[] noisy(double[] signal, double belowDb, long seed) {
    double sum = 0;
    for (double x : signal) {
      sum += x * x;
    }
    double sigma =
        Math.sqrt(sum / (sweep.seconds() * sweep.rateHz())) * Math.pow(10, -belowDb / 20);
    Random random = new Random(seed);
    double[] result = new double[signal.length];
    for (int n = 0; n < result.length; n++) {
      result[n] = signal[n] + sigma * random.nextGaussian();
    }
    return result;
  }

  Samples samples(double[] signal) {
    float[] values = new float[signal.length];
    for (int n = 0; n < values.length; n++) {
      values[n] = (float) signal[n];
    }
    return new Samples(values, sweep.rateHz());
  }

  static FilterChain wire(double rateHz) {
    return FilterChain.of(rateHz);
  }
}
