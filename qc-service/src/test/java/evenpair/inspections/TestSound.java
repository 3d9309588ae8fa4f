package evenpair.inspections;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.FilterChain;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.captures.WavWriter;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;

/** Captures made of the stimulus itself, a filter chain for the earpiece, and seeded noise. */
final class TestSound {
  static final double RATE = 48_000;
  static final Sweep SWEEP = Sweep.standard(RATE);

  /** White noise of the capture, r.m.s. re full scale: far below the sweep, so that nothing is noisy by accident. */
  static final double QUIET = 1e-5;

  private TestSound() {}

  /** @return one channel's recording of an earpiece with those filters */
  static float[] capture(long seed, double noise, Biquad... earpiece) {
    double[] played = widen(SweepSignal.render(SWEEP));
    double[] heard = new FilterChain(Arrays.asList(earpiece), RATE).filter(played);
    return noisy(seed, noise, heard);
  }

  private static float[] noisy(long seed, double noise, double[] heard) {
    Random random = new Random(seed);
    float[] capture = new float[heard.length];
    for (int i = 0; i < capture.length; i++) {
      capture[i] = (float) (heard[i] + noise * random.nextGaussian());
    }
    return capture;
  }

  static float[] capture(long seed, Biquad... earpiece) {
    return capture(seed, QUIET, earpiece);
  }

  /** @return a capture of an earpiece that bends the stimulus before its filters: x + k·x² */
  static float[] bent(long seed, double k, Biquad... earpiece) {
    double[] bent = widen(SweepSignal.render(SWEEP));
    for (int i = 0; i < bent.length; i++) {
      bent[i] += k * bent[i] * bent[i];
    }
    return noisy(seed, QUIET, new FilterChain(Arrays.asList(earpiece), RATE).filter(bent));
  }

  /** @return what an idle unit gives: white noise of that r.m.s. and a tone of that peak, both re full scale */
  static byte[] idle(long seed, double seconds, double rms, double toneHz, double tonePeak) {
    double[] tone = new double[(int) (seconds * RATE)];
    for (int i = 0; i < tone.length; i++) {
      tone[i] = tonePeak * Math.sin(2 * Math.PI * toneHz * i / RATE);
    }
    return wav(noisy(seed, rms, tone));
  }

  static byte[] wav(float[] samples) {
    return WavWriter.float32(new Samples(samples, RATE));
  }

  static byte[] wav(float[] left, float[] right) {
    return WavWriter.float32(new Samples(left, RATE), new Samples(right, RATE));
  }

  static byte[] wav(float[] left, float[] right, float[] drive) {
    return WavWriter.float32(new Samples(left, RATE), new Samples(right, RATE), new Samples(drive, RATE));
  }

  /** @return a sound calibrator's tone of that peak re full scale, 2 s */
  static byte[] tone(double hz, double peak) {
    float[] samples = new float[(int) (2 * RATE)];
    for (int i = 0; i < samples.length; i++) {
      samples[i] = (float) (peak * Math.sin(2 * Math.PI * hz * i / RATE));
    }
    return wav(samples);
  }

  static Biquad peak(double hz, double gainDb) {
    return Biquad.peak(hz, gainDb, 2, RATE);
  }

  private static double[] widen(float[] samples) {
    return DoubleStream.iterate(0, i -> i < samples.length, i -> i + 1).map(i -> samples[(int) i]).toArray();
  }
}
