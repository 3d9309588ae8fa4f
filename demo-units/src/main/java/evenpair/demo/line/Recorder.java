package evenpair.demo.line;

import evenpair.acoustics.Samples;
import evenpair.demo.earpiece.Earpiece;
import evenpair.demo.earpiece.Mounting;
import evenpair.demo.earpiece.Phasors;
import evenpair.tolerance.Channel;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.random.RandomGenerator;
import org.jtransforms.fft.DoubleFFT_1D;

/**
 * Renders what a bench's microphone records while the stimulus is played: stimulus → cable →
 * earpiece → ear simulator → microphone, as a product of spectra, with the room's noise, as a
 * 24-bit WAV. Plans its transform once; may be shared.
 */
public final class Recorder {
  /**
   * The longest tail of a response, s, that must not wrap around into the capture's beginning: the
   * sweep's low end, whose tail is the longest, is over more than a second before the stimulus' own
   * silence ends.
   */
  private static final double RESPONSE_SECONDS = 0.3;

  private final double[] stimulus;
  private final int rateHz;
  private final int length;
  private final DoubleFFT_1D transform;
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
    double perPascal = take.gain() / bench.pascalPerFullScale(simulator);
    for (int n = 0; n < pascal.length; n++) {
      pascal[n] = (pascal[n] + noise[n]) * perPascal;
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
    multiply(signal, earpiece.recorded(binHz, mounting), gains(bench, simulator));
    transform.realInverse(signal, true);
    return Arrays.copyOf(signal, start + stimulus.length);
  }

  /**
   * The transform keeps the real parts at 0 Hz and at half the sample rate in the first two places.
   */
  private static void multiply(double[] spectrum, Phasors response, double[] gains) {
    int last = gains.length - 1;
    spectrum[0] *= response.re(0) * gains[0];
    spectrum[1] *= response.re(last) * gains[last];
    for (int k = 1; k < last; k++) {
      double x = response.re(k) * gains[k];
      double y = response.im(k) * gains[k];
      double real = spectrum[2 * k] * x - spectrum[2 * k + 1] * y;
      spectrum[2 * k + 1] = spectrum[2 * k] * y + spectrum[2 * k + 1] * x;
      spectrum[2 * k] = real;
    }
  }

  /** One channel of one bench: its simulator's gain at every bin never changes. */
  private double[] gains(Bench bench, Channel simulator) {
    return simulatorGains.computeIfAbsent(
        new SimulatorPlace(bench, simulator),
        place -> Arrays.stream(binHz).map(hz -> bench.difference().gain(simulator, hz)).toArray());
  }

  private record SimulatorPlace(Bench bench, Channel simulator) {}
}
