package evenpair.inspections;

import evenpair.acoustics.Biquad;
import evenpair.acoustics.FilterChain;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import evenpair.captures.WavWriter;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import java.util.stream.DoubleStream;

/** Captures made of the stimulus itself, a filter chain for the earpiece, and seeded noise. */
final class TestSound {
  static final double RATE = 48_000;
  static final Sweep SWEEP = Sweep.standard(RATE);

  /**
   * White noise of the capture, r.m.s. re full scale: far below the sweep, so that nothing is noisy
   * by accident.
   */
  static final double QUIET = 1e-5;

  private TestSound() {}

  /**
   * @return one channel's recording of an earpiece with those filters
   */
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

  /**
   * @return a capture of an earpiece that bends the stimulus before its filters: x + k·x²
   */
  static float[] bent(long seed, double k, Biquad... earpiece) {
    double[] bent = widen(SweepSignal.render(SWEEP));
    for (int i = 0; i < bent.length; i++) {
      bent[i] += k * bent[i] * bent[i];
    }
    return noisy(seed, QUIET, new FilterChain(Arrays.asList(earpiece), RATE).filter(bent));
  }

  /**
   * @return what an idle unit gives: white noise of that r.m.s. and a tone of that peak, both re
   *     full scale
   */
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

  /**
   * @return three channels of 32-bit float; written by hand, as the writer makes one channel or two
   */
  static byte[] wav(float[] left, float[] right, float[] drive) {
    int data = 3 * Float.BYTES * left.length;
    ByteBuffer file = ByteBuffer.allocate(44 + data).order(ByteOrder.LITTLE_ENDIAN);
    file.put(ascii("RIFF")).putInt(36 + data).put(ascii("WAVE"));
    file.put(ascii("fmt ")).putInt(16).putShort((short) 3).putShort((short) 3);
    file.putInt((int) RATE).putInt((int) RATE * 12).putShort((short) 12).putShort((short) 32);
    file.put(ascii("data")).putInt(data);
    for (int i = 0; i < left.length; i++) {
      file.putFloat(left[i]).putFloat(right[i]).putFloat(drive[i]);
    }
    return file.array();
  }

  private static byte[] ascii(String text) {
    return text.getBytes(StandardCharsets.US_ASCII);
  }

  /**
   * @return a sound calibrator's tone of that peak re full scale, 2 s
   */
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
    return DoubleStream.iterate(0, i -> i < samples.length, i -> i + 1)
        .map(i -> samples[(int) i])
        .toArray();
  }
}
