package evenpair.captures;

import static evenpair.captures.WavBytes.FLOAT;
import static evenpair.captures.WavBytes.PCM;
import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Band;
import evenpair.acoustics.Chains;
import evenpair.acoustics.Curve;
import evenpair.acoustics.FilterChain;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The whole way of a capture's bytes: a stereo WAV file in each format a recorder writes, through
 * the reader, to the levels of two known linear systems. The truth is analytic, and the file's
 * writer shares nothing with the reader.
 */
class CaptureAccuracyTests {
  private static final Band JUDGED = new Band(20, 16_000);

  /** The bar without noise, at 16 bits and more. */
  private static final double CLEAN_DB = 0.05;

  /** The bar with white noise 50 dB below the capture. */
  private static final double NOISY_DB = 0.1;

  private static final Map<Integer, ResponseAnalyser> ANALYSERS = new ConcurrentHashMap<>();

  static Stream<Arguments> everyFormatAtEveryRate() {
    return Stream.of(44_100, 48_000, 96_000)
        .flatMap(
            rate ->
                Stream.of(
                    Arguments.of(rate, PCM, 16),
                    Arguments.of(rate, PCM, 24),
                    Arguments.of(rate, PCM, 32),
                    Arguments.of(rate, FLOAT, 32),
                    Arguments.of(rate, FLOAT, 64)));
  }

  @ParameterizedTest(name = "{0} Hz, format {1}, {2} bits")
  @MethodSource("everyFormatAtEveryRate")
  void bothChannelsAreWithinTheBarWithoutNoise(int rate, int tag, int bits) throws Exception {
    FilterChain left = Chains.named("an earphone", rate);
    FilterChain right = Chains.named("steep high-pass at 45 Hz", rate);
    WavAudio audio = WavReader.read(WavBytes.file(tag, bits, rate, capture(left), capture(right)));
    assertThat(worst(audio, 0, left)).isLessThan(CLEAN_DB);
    assertThat(worst(audio, 1, right)).isLessThan(CLEAN_DB);
  }

  @ParameterizedTest(name = "{0} Hz, format {1}, {2} bits")
  @MethodSource("everyFormatAtEveryRate")
  void bothChannelsAreWithinTheBarInNoise(int rate, int tag, int bits) throws Exception {
    FilterChain left = Chains.named("an earphone", rate);
    FilterChain right = Chains.named("broad peak", rate);
    byte[] file = WavBytes.file(tag, bits, rate, noisy(capture(left), 1), noisy(capture(right), 2));
    WavAudio audio = WavReader.read(file);
    assertThat(worst(audio, 0, left)).isLessThan(NOISY_DB);
    assertThat(worst(audio, 1, right)).isLessThan(NOISY_DB);
  }

  @Test
  void aFloatFileOfTheProgramsOwnComesBackToTheLastBit() throws Exception {
    double[] capture = capture(Chains.named("an earphone", 48_000));
    float[] narrow = new float[capture.length];
    IntStream.range(0, narrow.length).forEach(n -> narrow[n] = (float) capture[n]);
    Samples direct = new Samples(narrow, 48_000);
    Samples read = WavReader.read(WavWriter.float32(direct)).channels().get(0);
    assertThat(read.values()).isEqualTo(narrow);
    assertThat(analyser(48_000).analyse(read).level())
        .isEqualTo(analyser(48_000).analyse(direct).level());
  }

  private static double worst(WavAudio audio, int channel, FilterChain truth) throws Exception {
    Samples samples = audio.channels().get(channel);
    Curve level = analyser((int) audio.rateHz()).analyse(samples).level();
    return Chains.worst(level, truth, JUDGED);
  }

  private static ResponseAnalyser analyser(int rate) {
    return ANALYSERS.computeIfAbsent(rate, r -> new ResponseAnalyser(Sweep.standard(r)));
  }

  private static double[] capture(FilterChain chain) {
    float[] played = SweepSignal.render(Sweep.standard(chain.rateHz()));
    double[] signal = new double[played.length];
    IntStream.range(0, signal.length).forEach(n -> signal[n] = played[n]);
    return chain.filter(signal);
  }

  /** White Gaussian noise 50 dB below the capture's r.m.s. while the sweep plays. */
  private static double[] noisy(double[] signal, long seed) {
    double sum = 0;
    for (double x : signal) {
      sum += x * x;
    }
    // the sweep plays for 1.2 s of the recording's 1.85 s
    double sigma = Math.sqrt(sum / signal.length * 1.85 / 1.2) * Math.pow(10, -50 / 20.0);
    Random random = new Random(seed);
    double[] result = new double[signal.length];
    for (int n = 0; n < result.length; n++) {
      result[n] = signal[n] + sigma * random.nextGaussian();
    }
    return result;
  }
}
