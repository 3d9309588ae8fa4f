package evenpair.demo.line;

import evenpair.acoustics.Samples;
import evenpair.demo.earpiece.Earpiece;
import evenpair.demo.earpiece.Mounting;
import evenpair.tolerance.Channel;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.random.RandomGenerator;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Renders what a bench's microphone records while the stimulus is played: stimulus → cable →
 * earpiece → ear simulator → microphone, as a product of spectra, to which the dynamic drivers'
 * bending is added, with the room's noise, as a 24-bit WAV. Plans its transform once; may be
 * shared.
 */
public final class Recorder {
  /**
   * The longest tail of a response, s, that must not wrap around into the capture's beginning: the
   * sweep's low end, whose tail is the longest, is over more than a second before the stimulus' own
   * silence ends.
   */
  private static final double RESPONSE_SECONDS = 0.3;

  /** Idle noise is averaged over half-second pieces; four are the least, this gives seven. */
  private static final double IDLE_SECONDS = 2;

  private final double[] stimulus;
  private final int rateHz;
  private final int length;
  private final DoubleFFT_1D transform;
  private final Bending bending;
  private final double[] binHz;
  private final Map<SimulatorPlace, double[]> simulatorGains = new ConcurrentHashMap<>();

  /**
   * @param stimulus the signal that is played, silences included, at a whole-numbered sample rate
   * @param latestStartSeconds the largest delay that will be asked for, s
   */
  public Recorder(Samples stimulus, double latestStartSeconds) {
    this.rateHz = (int) stimulus.rateHz();
    this.stimulus = new double[stimulus.values().length];
    for (int n = 0; n < this.stimulus.length; n++) {
      this.stimulus[n] = stimulus.values()[n];
    }
    int needed = this.stimulus.length + (int) ((latestStartSeconds + RESPONSE_SECONDS) * rateHz);
    this.length = Integer.highestOneBit(needed - 1) * 2;
    this.transform = new DoubleFFT_1D(length);
    this.binHz = new double[length / 2 + 1];
    for (int k = 0; k < binHz.length; k++) {
      binHz[k] = (double) k * rateHz / length;
    }
    this.bending = new Bending(binHz, transform);
  }

  /**
   * Records one earpiece.
   *
   * @param take how the recording goes: mounting, start, flaw
   * @param random the noise's source
   * @return a mono WAV file of 24-bit integers
   */
  public byte[] record(
      Bench bench,
      Channel simulator,
      Earpiece earpiece,
      Cable cable,
      Mounting mounting,
      Take take,
      RandomGenerator random) {
    double[] pascal = pressure(bench, simulator, earpiece, cable, mounting, take.startSeconds());
    double[] noise = Background.pascal(pascal.length, rateHz, take.noiseDb(bench), random);
    for (int n = 0; n < pascal.length; n++) {
      pascal[n] += noise[n];
    }
    return file(pascal, take.gain() / bench.pascalPerFullScale(simulator));
  }

  /**
   * Records while nothing plays: the room, and what the cable puts into the earpiece.
   *
   * @return a mono WAV file of 24-bit integers
   */
  byte[] idle(Bench bench, Channel simulator, Hum hum, RandomGenerator random) {
    int samples = (int) Math.round(IDLE_SECONDS * rateHz);
    double[] pascal = Background.pascal(samples, rateHz, bench.backgroundDb(), random);
    double hiss = hum.hissPascal();
    for (int n = 0; n < samples; n++) {
      pascal[n] += hiss * random.nextGaussian();
    }
    hum.addFrames(pascal, rateHz);
    return file(pascal, 1 / bench.pascalPerFullScale(simulator));
  }

  private byte[] file(double[] pascal, double perPascal) {
    for (int n = 0; n < pascal.length; n++) {
      pascal[n] *= perPascal;
    }
    return Pcm24.mono(pascal, rateHz);
  }

  /**
   * @return sound pressure at the microphone, Pa, from the recording's start to the stimulus' end
   */
  private double[] pressure(
      Bench bench,
      Channel simulator,
      Earpiece earpiece,
      Cable cable,
      Mounting mounting,
      double startSeconds) {
    int start = (int) Math.round(startSeconds * rateHz);
    double[] signal = new double[length];
    System.arraycopy(
        cable.drive(stimulus, bench.voltsPerFullScale()), 0, signal, start, stimulus.length);
    transform.realForward(signal);
    double[] bent = bending.of(signal, earpiece.motion());
    Bending.multiply(signal, earpiece.driven(binHz));
    double[] gains = gains(bench, simulator);
    for (int n = 0; n < length; n++) {
      double gain = gains[n == 1 ? gains.length - 1 : n / 2];
      signal[n] = (signal[n] + earpiece.dynamicGain() * bent[n]) * gain;
    }
    Bending.multiply(signal, earpiece.path(binHz, mounting));
    transform.realInverse(signal, true);
    return Arrays.copyOf(signal, start + stimulus.length);
  }

  /** One channel of one bench: its simulator's gain at every bin never changes. */
  private double[] gains(Bench bench, Channel simulator) {
    return simulatorGains.computeIfAbsent(
        new SimulatorPlace(bench, simulator),
        place -> Arrays.stream(binHz).map(hz -> bench.difference().gain(simulator, hz)).toArray());
  }

  private record SimulatorPlace(Bench bench, Channel simulator) {}
}
