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
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Measured against known linear systems. The truth is the analytic |H|² of the filters averaged
 * over the same bands; it shares nothing with the deconvolution. Captures begin at seeded random
 * places of the allowed span.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ResponseAnalyserTests {
  private static final double[] RATES = {44_100, 48_000, 96_000};
  private static final Band JUDGED = new Band(20, 16_000);

  /** The bar for captures without noise and for 16 bit. */
  private static final double CLEAN_DB = 0.05;

  /** The bar with white noise 50 dB below the capture. */
  private static final double NOISY_DB = 0.1;

  private final Map<Double, Captures> rigs = new LinkedHashMap<>();
  private final Map<Double, ResponseAnalyser> analysers = new LinkedHashMap<>();

  ResponseAnalyserTests() {
    for (double rate : RATES) {
      rigs.put(rate, new Captures(rate));
      analysers.put(rate, new ResponseAnalyser(Sweep.standard(rate)));
    }
  }

  static Map<String, FilterChain> chains(double fs) {
    Map<String, FilterChain> chains = new LinkedHashMap<>();
    chains.put("straight wire", FilterChain.of(fs));
    chains.put("broad peak", FilterChain.of(fs, Biquad.peak(1000, 6, 1, fs)));
    chains.put("sharp peak at 8 kHz", FilterChain.of(fs, Biquad.peak(8000, 12, 5, fs)));
    chains.put(
        "shelves",
        FilterChain.of(
            fs, Biquad.lowShelf(105, 5.5, 0.71, fs), Biquad.highShelf(4000, -4, 0.71, fs)));
    chains.put("high-pass at 30 Hz", FilterChain.of(fs, Biquad.highPass(30, 0.71, fs)));
    chains.put(
        "steep high-pass at 45 Hz",
        FilterChain.of(fs, Biquad.highPass(45, 0.54, fs), Biquad.highPass(45, 1.31, fs)));
    chains.put("narrow notch of 13 dB", FilterChain.of(fs, Biquad.peak(3000, -13, 15, fs)));
    chains.put("dip at 60 Hz", FilterChain.of(fs, Biquad.peak(60, -13, 4, fs)));
    chains.put("bass resonance", FilterChain.of(fs, Biquad.peak(25, 6, 2, fs)));
    chains.put(
        "low-pass at 12 kHz",
        FilterChain.of(fs, Biquad.lowPass(12_000, 0.7, fs), Biquad.highPass(20, 0.7, fs)));
    chains.put(
        "an earphone",
        FilterChain.of(
            fs,
            Biquad.gain(-20),
            Biquad.highPass(20, 0.7, fs),
            Biquad.peak(120, 3, 1, fs),
            Biquad.peak(2800, 8, 2, fs),
            Biquad.peak(8000, 9, 6, fs),
            Biquad.peak(5000, -13, 10, fs)));
    chains.put(
        "reversed", FilterChain.of(fs, new Biquad(-0.5, 0, 0, 0, 0), Biquad.highPass(40, 0.7, fs)));
    return chains;
  }

  static Stream<Arguments> everyChainAtEveryRate() {
    List<Arguments> all = new ArrayList<>();
    for (double rate : RATES) {
      chains(rate).forEach((name, chain) -> all.add(Arguments.of(name, rate, chain)));
    }
    return all.stream();
  }

  private static double start(String name, double rate) {
    // the span in which a sweep may begin, 250 ms to 1 s
    return 0.2505 + 0.749 * new Random(name.hashCode() + (long) rate).nextDouble();
  }

  private static double worst(Curve measured, FilterChain truth, Band band) {
    double worst = 0;
    for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
      worst = Math.max(worst, Math.abs(measured.at(i) - truth.powerMeanDb(i)));
    }
    return worst;
  }

  private static double[] quantised(double[] signal, int bits) {
    double steps = Math.pow(2, bits - 1);
    double[] result = new double[signal.length];
    for (int n = 0; n < result.length; n++) {
      result[n] = Math.rint(signal[n] * steps) / steps;
    }
    return result;
  }

  @Nested
  @TestInstance(TestInstance.Lifecycle.PER_CLASS)
  class Level {
    static Stream<Arguments> everyChainAtEveryRate() {
      return ResponseAnalyserTests.everyChainAtEveryRate();
    }

    @ParameterizedTest(name = "{0} at {1} Hz")
    @MethodSource("everyChainAtEveryRate")
    void isWithinTheBarWithoutNoiseAndAt16Bit(String name, double rate, FilterChain chain)
        throws Exception {
      Captures rig = rigs.get(rate);
      double[] capture = rig.through(chain, start(name, rate));
      Response clean = analysers.get(rate).analyse(rig.samples(capture));
      Response coarse = analysers.get(rate).analyse(rig.samples(quantised(capture, 16)));
      assertThat(worst(clean.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
      assertThat(worst(coarse.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
    }

    @ParameterizedTest(name = "{0} at {1} Hz")
    @MethodSource("everyChainAtEveryRate")
    void isWithinTheBarWithNoise50DbBelowTheCapture(String name, double rate, FilterChain chain)
        throws Exception {
      Captures rig = rigs.get(rate);
      double[] capture = rig.noisy(rig.through(chain, start(name, rate)), 50, name.hashCode());
      Response response = analysers.get(rate).analyse(rig.samples(capture));
      assertThat(worst(response.level(), chain, JUDGED)).isLessThan(NOISY_DB);
    }

    @Test
    void doesNotMindAPureDelay() throws Exception {
      FilterChain chain = chains(48_000).get("an earphone");
      Captures rig = rigs.get(48_000.0);
      // 0.35 s, then 7.3 ms of path: half a sample apart from the sample raster is done by the
      // resampling test
      Response response =
          analysers.get(48_000.0).analyse(rig.samples(rig.through(chain, 0.35 + 0.0073)));
      assertThat(worst(response.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
      assertThat(response.delaySeconds()).isCloseTo(0.0073, within(0.0001));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-100, 100})
    void doesNotMindAClockDifferenceOf100Ppm(double ppm) throws Exception {
      FilterChain chain = chains(48_000).get("an earphone");
      Captures rig = rigs.get(48_000.0);
      double[] capture = resampled(rig.through(chain, 0.4), 1 + ppm * 1e-6);
      Response response = analysers.get(48_000.0).analyse(rig.samples(capture));
      assertThat(worst(response.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
    }

    @Test
    void doesNotMindAnOffsetOfTheConverter() throws Exception {
      FilterChain chain = chains(48_000).get("an earphone");
      Captures rig = rigs.get(48_000.0);
      double[] capture = rig.through(chain, 0.4);
      for (int n = 0; n < capture.length; n++) {
        capture[n] += 0.002;
      }
      Response response = analysers.get(48_000.0).analyse(rig.samples(capture));
      assertThat(worst(response.level(), chain, JUDGED)).isLessThan(NOISY_DB);
    }

    @Test
    void isTheSameForALongRecordingOfTheSameSweep() throws Exception {
      FilterChain chain = chains(48_000).get("an earphone");
      Captures rig = rigs.get(48_000.0);
      double[] capture = rig.through(chain, 0.4);
      double[] longer = new double[60 * 48_000];
      System.arraycopy(capture, 0, longer, 0, capture.length);
      Response response = analysers.get(48_000.0).analyse(rig.samples(longer));
      assertThat(worst(response.level(), chain, JUDGED)).isLessThan(CLEAN_DB);
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
      Samples one = rig.samples(rig.through(chains(48_000).get("an earphone"), 0.3));
      Samples other = rig.samples(rig.through(chains(48_000).get("shelves"), 0.6));
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

    /**
     * Reads the signal at another speed by a windowed sinc of 64 samples: exact to 1e-4 up to 0.45
     * of the rate.
     */
    private static double[] resampled(double[] signal, double ratio) {
      double[] result = new double[signal.length];
      for (int n = 0; n < result.length; n++) {
        double place = n * ratio;
        int middle = (int) Math.floor(place);
        double sum = 0;
        for (int k = Math.max(0, middle - 31); k <= Math.min(signal.length - 1, middle + 32); k++) {
          double x = place - k;
          double window = 0.5 + 0.5 * Math.cos(Math.PI * x / 33);
          sum += signal[k] * window * (x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x));
        }
        result[n] = sum;
      }
      return result;
    }
  }

  @Nested
  class Phase {
    @Test
    void isThatOfTheFiltersLessTheArrival() throws Exception {
      FilterChain chain = chains(48_000).get("an earphone");
      Captures rig = rigs.get(48_000.0);
      Response response = analysers.get(48_000.0).analyse(rig.samples(rig.through(chain, 0.35)));
      double late = response.arrivalSeconds() - 0.35;
      for (int i = 0; i < Grid.POINTS; i++) {
        double expected =
            Math.toDegrees(chain.response(Grid.hz(i)).getArgument()) + 360 * Grid.hz(i) * late;
        // a hundredth of a turn is far below what polarity needs; measured 0.05 degrees
        assertThat(Math.IEEEremainder(response.phaseDeg()[i] - expected, 360))
            .isCloseTo(0, within(0.5));
      }
    }

    @Test
    void tellsAReversedUnitFromAGoodOne() throws Exception {
      Captures rig = rigs.get(48_000.0);
      FilterChain good = chains(48_000).get("an earphone");
      List<Biquad> reversed = new ArrayList<>(good.filters());
      reversed.add(new Biquad(-1, 0, 0, 0, 0));
      Response one =
          analysers.get(48_000.0).analyse(rig.samples(rig.noisy(rig.through(good, 0.35), 40, 1)));
      Response other =
          analysers
              .get(48_000.0)
              .analyse(
                  rig.samples(
                      rig.noisy(rig.through(new FilterChain(reversed, 48_000), 0.6), 40, 2)));
      double r =
          Polarity.correlation(
              one.level(), one.phaseDeg(), other.level(), other.phaseDeg(), new Band(100, 1000));
      assertThat(r).isLessThan(-0.99);
    }
  }

  @Nested
  class SignalToNoise {
    @Test
    void isTheScatterThatRepeatedCapturesShow() throws Exception {
      // 24 captures with other noise: the mean power of what differs from the clean response, over
      // the noise' own estimate.
      Captures rig = rigs.get(48_000.0);
      double[] clean = rig.through(FilterChain.of(48_000), 0.5);
      ResponseAnalyser analyser = analysers.get(48_000.0);
      Response truth = analyser.analyse(rig.samples(clean));
      Band band = new Band(500, 8000);
      double scatter = 0;
      double predicted = 0;
      for (int seed = 0; seed < 24; seed++) {
        Response noisy = analyser.analyse(rig.samples(rig.noisy(clean, 30, seed)));
        for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
          double error = (noisy.level().at(i) - truth.level().at(i)) * Math.log(10) / 20;
          // a band of width w over a window of 0.31 s (Σw²) averages w·0.31 independent values,
          // half of their power in phase
          double values = Math.max(1, (Grid.upperEdge(i) - Grid.lowerEdge(i)) * 0.31);
          scatter += error * error * 2 * values;
          predicted += Math.pow(10, -noisy.signalToNoise().at(i) / 10);
        }
      }
      // within 1.5 dB: the count of independent values in a narrow band is only roughly its width
      // times the window's length
      assertThat(10 * Math.log10(scatter / predicted)).isCloseTo(0, within(1.5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {20, 40, 60})
    void fallsDbForDbWithTheNoise(double belowDb) throws Exception {
      Captures rig = rigs.get(48_000.0);
      double[] clean = rig.through(FilterChain.of(48_000), 0.5);
      Response response =
          analysers.get(48_000.0).analyse(rig.samples(rig.noisy(clean, belowDb, 5)));
      // By hand: |X|² = a²·fs²·L/(4f) over σ²·fs·Σw²/fs, σ² = (a²/2)·10^(−dB/10), Σw²/fs =
      // 0.016/2+0.25+… = 0.297 s at 1 kHz:
      // fs·L/(4·1000·0.5·0.297)·10^(dB/10). The lead-in's estimate at 1 kHz rests on some 90 bins:
      // ±0.5 dB, 3 sigma 1.5 dB.
      double l = Sweep.standard(48_000).rate();
      double energy = 0.0162 + 0.0162 * 3 / 8 + 0.25 + 0.05 * 3 / 8;
      double expected = 10 * Math.log10(48_000 * l / (4 * 1000 * 0.5 * energy)) + belowDb;
      assertThat(response.signalToNoise().at(Grid.nearest(1000))).isCloseTo(expected, within(1.5));
    }

    @Test
    void isAFiniteNumberEvenForASilentLeadIn() throws Exception {
      Captures rig = rigs.get(48_000.0);
      Response response =
          analysers.get(48_000.0).analyse(rig.samples(rig.through(FilterChain.of(48_000), 0.35)));
      assertThat(response.signalToNoise().at(Grid.nearest(1000))).isBetween(100.0, 200.0);
    }
  }

  @Nested
  class Refuses {
    @Test
    void aCaptureOfAnotherSampleRate() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> analysers.get(48_000.0).analyse(new Samples(new float[96_000], 44_100)))
          .withMessageContaining("44100.0 Hz");
    }
  }
}
