package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Levels against known linear systems. The truth is the analytic |H|² of the filters averaged over
 * the same bands; it shares nothing with the deconvolution. Captures begin at seeded random places
 * of the allowed span.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ResponseLevelTests {
  private static final double[] RATES = {44_100, 48_000, 96_000};
  private static final Band JUDGED = new Band(20, 16_000);

  /** The bar for captures without noise and for 16 bit. */
  private static final double CLEAN_DB = 0.05;

  /** The bar with white noise 50 dB below the capture. */
  private static final double NOISY_DB = 0.1;

  private final Map<Double, Captures> rigs = new LinkedHashMap<>();
  private final Map<Double, ResponseAnalyser> analysers = new LinkedHashMap<>();

  ResponseLevelTests() {
    for (double rate : RATES) {
      rigs.put(rate, new Captures(rate));
      analysers.put(rate, new ResponseAnalyser(Sweep.standard(rate)));
    }
  }

  static Stream<Arguments> everyChainAtEveryRate() {
    List<Arguments> all = new ArrayList<>();
    for (double rate : RATES) {
      Chains.all(rate).forEach((name, chain) -> all.add(Arguments.of(name, rate, chain)));
    }
    return all.stream();
  }

  private static double start(String name, double rate) {
    // the span in which a sweep may begin, 250 ms to 1 s
    return 0.2505 + 0.749 * new Random(name.hashCode() + (long) rate).nextDouble();
  }

  private static double[] quantised(double[] signal, int bits) {
    double steps = Math.pow(2, bits - 1);
    double[] result = new double[signal.length];
    for (int n = 0; n < result.length; n++) {
      result[n] = Math.rint(signal[n] * steps) / steps;
    }
    return result;
  }

  @ParameterizedTest(name = "{0} at {1} Hz")
  @MethodSource("everyChainAtEveryRate")
  void isWithinTheBarWithoutNoiseAndAt16Bit(String name, double rate, FilterChain chain)
      throws Exception {
    Captures rig = rigs.get(rate);
    double[] capture = rig.through(chain, start(name, rate));
    Response clean = analysers.get(rate).analyse(rig.samples(capture));
    Response coarse = analysers.get(rate).analyse(rig.samples(quantised(capture, 16)));
    assertThat(Chains.worst(clean.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
    assertThat(Chains.worst(coarse.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
  }

  @ParameterizedTest(name = "{0} at {1} Hz")
  @MethodSource("everyChainAtEveryRate")
  void isWithinTheBarWithNoise50DbBelowTheCapture(String name, double rate, FilterChain chain)
      throws Exception {
    Captures rig = rigs.get(rate);
    double[] capture = rig.noisy(rig.through(chain, start(name, rate)), 50, name.hashCode());
    Response response = analysers.get(rate).analyse(rig.samples(capture));
    assertThat(Chains.worst(response.level(), chain, JUDGED)).isLessThan(NOISY_DB);
  }

  @ParameterizedTest(name = "{0} samples at {1} Hz")
  @CsvSource({
    "0, 48000",
    "0.25, 48000",
    "0.5, 48000",
    "0.73, 48000",
    "350.4, 48000",
    "0.5, 44100",
    "0.5, 96000"
  })
  void doesNotMindADelayWhetherWholeOrNot(double samples, double rate) throws Exception {
    FilterChain chain = Chains.named("an earphone", rate);
    Captures rig = rigs.get(rate);
    double[] capture = rig.through(chain, 0.4);
    double undelayed = analysers.get(rate).analyse(rig.samples(capture)).arrivalSeconds();
    Response response = analysers.get(rate).analyse(rig.samples(read(capture, -samples, 1)));
    assertThat(Chains.worst(response.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
    // a parabola through three samples finds the peak between them to a tenth
    assertThat((response.arrivalSeconds() - undelayed) * rate).isCloseTo(samples, within(0.1));
  }

  @ParameterizedTest
  @ValueSource(doubles = {-100, 100})
  void doesNotMindAClockDifferenceOf100Ppm(double ppm) throws Exception {
    FilterChain chain = Chains.named("an earphone", 48_000);
    Captures rig = rigs.get(48_000.0);
    double[] capture = read(rig.through(chain, 0.4), 0, 1 + ppm * 1e-6);
    Response response = analysers.get(48_000.0).analyse(rig.samples(capture));
    assertThat(Chains.worst(response.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
  }

  @Test
  void doesNotMindAnOffsetOfTheConverter() throws Exception {
    FilterChain chain = Chains.named("an earphone", 48_000);
    Captures rig = rigs.get(48_000.0);
    double[] capture = rig.through(chain, 0.4);
    for (int n = 0; n < capture.length; n++) {
      capture[n] += 0.002;
    }
    Response response = analysers.get(48_000.0).analyse(rig.samples(capture));
    assertThat(Chains.worst(response.level(), chain, JUDGED)).isLessThan(NOISY_DB);
  }

  @Test
  void isTheSameForALongRecordingOfTheSameSweep() throws Exception {
    FilterChain chain = Chains.named("an earphone", 48_000);
    Captures rig = rigs.get(48_000.0);
    double[] capture = rig.through(chain, 0.4);
    double[] longer = new double[60 * 48_000];
    System.arraycopy(capture, 0, longer, 0, capture.length);
    Response response = analysers.get(48_000.0).analyse(rig.samples(longer));
    assertThat(Chains.worst(response.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
  }

  @Test
  void isAbsentWhereTheSweepDoesNotReach() throws Exception {
    Sweep narrow = new Sweep(40, 9000, 1, 48_000, 0.01, 0.35, 0.3, 0.25);
    Captures rig = new Captures(narrow);
    Response response =
        new ResponseAnalyser(narrow)
            .analyse(rig.samples(rig.through(FilterChain.of(48_000), 0.35)));
    assertThat(response.level().has(Grid.nearest(31.5))).isFalse();
    assertThat(response.level().has(Grid.nearest(10_000))).isFalse();
    assertThat(response.phaseDeg()[Grid.nearest(10_000)]).isNaN();
    assertThat(response.signalToNoise().has(Grid.nearest(10_000))).isFalse();
    assertThat(response.level().at(Grid.nearest(1000))).isCloseTo(0, within(CLEAN_DB));
  }

  @Test
  void isTheSameToTheLastBitFromManyThreads() throws Exception {
    Captures rig = rigs.get(48_000.0);
    ResponseAnalyser analyser = analysers.get(48_000.0);
    Samples one = rig.samples(rig.through(Chains.named("an earphone", 48_000), 0.3));
    Samples other = rig.samples(rig.through(Chains.named("shelves", 48_000), 0.6));
    float[] expectedOne = analyser.analyse(one).level().toFloats();
    float[] expectedOther = analyser.analyse(other).level().toFloats();
    ExecutorService threads = Executors.newFixedThreadPool(4);
    try {
      List<Callable<float[]>> tasks = new ArrayList<>();
      for (int k = 0; k < 24; k++) {
        Samples capture = k % 2 == 0 ? one : other;
        tasks.add(() -> analyser.analyse(capture).level().toFloats());
      }
      List<Future<float[]>> results = threads.invokeAll(tasks);
      for (int k = 0; k < results.size(); k++) {
        assertThat(results.get(k).get()).isEqualTo(k % 2 == 0 ? expectedOne : expectedOther);
      }
    } finally {
      threads.shutdownNow();
    }
  }

  @Test
  void refusesACaptureOfAnotherSampleRate() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> analysers.get(48_000.0).analyse(new Samples(new float[96_000], 44_100)))
        .withMessageContaining("44100.0 Hz");
  }

  /**
   * Reads the signal from a place between samples on, at another speed, by a windowed sinc of 64
   * samples: exact to 1e-4 up to 0.45 of the rate.
   */
  private static double[] read(double[] signal, double from, double speed) {
    double[] result = new double[signal.length];
    for (int n = 0; n < result.length; n++) {
      double place = from + n * speed;
      int middle = (int) Math.floor(place);
      for (int k = Math.max(0, middle - 31); k <= Math.min(signal.length - 1, middle + 32); k++) {
        double x = place - k;
        double window = 0.5 + 0.5 * Math.cos(Math.PI * x / 33);
        result[n] += signal[k] * window * (x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
      }
    }
    return result;
  }
}
