package evenpair.demo.screens;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Samples;
import evenpair.captures.WavAudio;
import evenpair.captures.WavReader;
import evenpair.captures.WavWriter;
import java.util.Base64;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * What the sound modules compute, run in the browser from the files that are served; needs no
 * sound.
 */
@BrowserTest
@OnePage
class SoundModulesTests {
  /**
   * A seeded source of even numbers in −1 … 1 (the generator of Numerical Recipes, from memory).
   */
  private static final String RANDOM =
      "let state = 7; const random = () => (state = (Math.imul(state, 1664525) + 1013904223) >>> 0) / 2 ** 31 - 1;";

  private Screen screen;

  @BeforeEach
  void open(Screen given) {
    screen = given;
    screen.openOnce("#/batch");
  }

  /**
   * @param body statements that return something; m is the module
   */
  private Object run(String module, String body) {
    return screen.evaluate(
        "async () => { const m = await import('/js/sound/" + module + "'); " + body + " }");
  }

  @Nested
  class Files {
    @Test
    void areTheVeryBytesThatTheServiceWrites() {
      Object file =
          run(
              "wav.js",
              """
              const file = m.encodeWav(new Float32Array([0, 0.5, -1, 0.1, 1e-7]), 44100)
              return btoa(String.fromCharCode(...new Uint8Array(file)))""");
      byte[] bytes = Base64.getDecoder().decode((String) file);
      float[] samples = {0, 0.5f, -1, 0.1f, 1e-7f};
      assertThat(bytes).isEqualTo(WavWriter.float32(new Samples(samples, 44_100)));
      WavAudio read = WavReader.read(bytes);
      assertThat(read.channels()).hasSize(1);
      assertThat(read.channels().get(0).values()).containsExactly(samples);
    }

    @Test
    void areReadBackAsTheyWereWritten() {
      assertThat(
              run(
                  "wav.js",
                  """
                  const { samples, rateHz } = m.decodeWav(m.encodeWav(new Float32Array([0.25, -0.75]), 48000))
                  return [...samples, rateHz]"""))
          .isEqualTo(List.of(0.25, -0.75, 48_000));
    }

    @ParameterizedTest
    @CsvSource({"[]", "[NaN]", "[Infinity]"})
    void areNeverWrittenWithoutSamplesOrWithOneThatIsNoNumber(String samples) {
      assertThat(
              run(
                  "wav.js",
                  "try { m.encodeWav(new Float32Array(%s), 48000); return 'written' } catch (e) { return e.name }"
                      .formatted(samples)))
          .isEqualTo("RangeError");
    }
  }

  @Nested
  class FourierTransform {
    /** Against the sum itself, 64 points: rounding stays far below 1e-12 of values up to 64. */
    @Test
    void isTheSumThatDefinesIt() {
      Number worst =
          (Number)
              run(
                  "fft.js",
                  RANDOM
                      + """
                      const N = 64, re = Float64Array.from({ length: N }, random), im = Float64Array.from({ length: N }, random)
                      const a = re.slice(), b = im.slice()
                      new m.Fft(N).forward(a, b)
                      let worst = 0
                      for (let k = 0; k < N; k++) {
                        let x = 0, y = 0
                        for (let n = 0; n < N; n++) {
                          const angle = -2 * Math.PI * k * n / N
                          x += re[n] * Math.cos(angle) - im[n] * Math.sin(angle)
                          y += re[n] * Math.sin(angle) + im[n] * Math.cos(angle)
                        }
                        worst = Math.max(worst, Math.abs(x - a[k]), Math.abs(y - b[k]))
                      }
                      return worst""");
      assertThat(worst.doubleValue()).isLessThan(1e-12);
    }

    @Test
    void comesBackByItsInverse() {
      Number worst =
          (Number)
              run(
                  "fft.js",
                  RANDOM
                      + """
                      const fft = new m.Fft(1024), re = Float64Array.from({ length: 1024 }, random), im = Float64Array.from({ length: 1024 }, random)
                      const a = re.slice(), b = im.slice()
                      fft.forward(a, b)
                      fft.inverse(a, b)
                      return Math.max(...re.map((x, n) => Math.abs(x - a[n])), ...im.map((x, n) => Math.abs(x - b[n])))""");
      assertThat(worst.doubleValue()).isLessThan(1e-12);
    }
  }

  @Nested
  class Finding {
    /** The stimulus, what is heard of it after some samples, and even noise of a deviation. */
    private static final String HEARD =
        RANDOM
            + """
              const { loadStimulus } = await import('/js/sound/stimulus.js'), stimulus = await loadStimulus('sweep-48000')
              const heard = (delay, gain, noise) => {
                const samples = new Float32Array(stimulus.signal.length + 40000)
                for (let n = 0; n < samples.length; n++) samples[n] = gain * (stimulus.signal[n - delay] ?? 0) + noise * Math.sqrt(3) * random()
                return samples
              }
              """;

    @Test
    void tellsForEachSideWhenTheSweepArrives() {
      assertThat(
              run(
                  "finder.js",
                  HEARD
                      + """
                      const { left, right } = new m.SweepFinder(stimulus).find(heard(5000, 0.5, 1e-4), heard(12345, -1, 1e-4))
                      return [left.found, left.delay, left.arrival, right.found, right.delay]"""))
          .isEqualTo(List.of(true, 5000, 5000 + 16_800, true, 12_345));
    }

    @Test
    void findsNothingInNoiseInSilenceOrInAnotherSignal() {
      assertThat(
              run(
                  "finder.js",
                  HEARD
                      + """
                      const finder = new m.SweepFinder(stimulus), other = heard(0, 1, 0).map((_, n) => 0.2 * Math.sin(n * n / 3e5))
                      const one = finder.find(heard(0, 0, 0.1), heard(0, 0, 0)), two = finder.find(other, other.map((_, n) => (n === 30000 ? 1 : 0)))
                      return [one.left.found, one.right.found, two.left.found, two.right.found]"""))
          .isEqualTo(List.of(false, false, false, false));
    }

    /**
     * White noise of σ = 0.01, |H| = 1. |X|² = a²·fs²·L/(4f) for an exponential sweep, its
     * reciprocal averaged over the octave by f = 1.06·1 kHz, Σw² = 3/8 of 205 ms:
     * 10·lg(5343/(σ²·3690)) = 41.6 dB. The octave holds some 140 independent noise bins, so the
     * estimate scatters by 0.4 dB; 1.6 dB are four times that.
     */
    @Test
    void measuresTheResponsesSignalToNoise() {
      Number db =
          (Number)
              run(
                  "finder.js",
                  HEARD
                      + """
                      const { left } = new m.SweepFinder(stimulus).find(heard(3000, 1, 0.01), heard(3000, 1, 0.01))
                      return left.noise.find(band => band.hz === 1000).db""");
      assertThat(db.doubleValue()).isCloseTo(41.6, within(1.6));
    }

    @Test
    void gapsAndRepetitionsAreSeenAndAWholeSweepIsNot() {
      assertThat(
              run(
                  "checks.js",
                  HEARD
                      + """
                      const arrival = 16800 + 100, whole = heard(100, 0.5, 1e-5), peak = m.peakOf(whole)
                      const silent = whole.slice().fill(0, 40000, 40480)
                      const lost = Float32Array.from(whole, (_, n) => whole[n < 50000 ? n : n + 128] ?? 0)
                      return [m.firstGap(whole, arrival, stimulus, peak), Math.abs(m.firstGap(silent, arrival, stimulus, peak) - 40000) < 960,
                        Math.abs(m.firstGap(lost, arrival, stimulus, peak) - 50000) < 960].map(String)"""))
          .isEqualTo(List.of("null", "true", "true"));
    }

    @Test
    void aCutCaptureBeginsAndEndsAsTheServiceNeedsIt() {
      assertThat(
              run(
                  "cut.js",
                  HEARD
                      + """
                      const { SweepFinder } = await import('/js/sound/finder.js')
                      const made = m.cut({ left: heard(6000, 0.5, 1e-5), right: heard(20000, 0.5, 1e-5) }, [], new SweepFinder(stimulus), stimulus)
                      const late = m.cut({ left: heard(6000, 0.5, 1e-5).subarray(0, 80000), right: heard(0, 0.5, 1e-5) }, [{ frames: 128 }], new SweepFinder(stimulus), stimulus)
                      return [made.left.samples.length, made.right.samples.length, made.flaws.length, made.delay, late.flaws.map(flaw => flaw.key.split('.').pop() + flaw.side).join(' '), late.recordedBadly]"""))
          // 350 ms before, 1.2 s, 300 ms after
          .isEqualTo(List.of(88_800, 88_800, 0, 20_000, "framesnull endMissingleft", true));
    }
  }

  @Nested
  class Checks {
    @Test
    void threeNeighbouringSamplesAtFullScaleAreClipping() {
      assertThat(run("checks.js", "return m.firstClipped([0.1, 1, -1, 0.2])")).isNull();
      assertThat(
              run(
                  "checks.js",
                  "const found = m.firstClipped([0.1, 1, 0.3, -1, 1, 0.99997, 0.2]); return [found.at, found.run]"))
          .isEqualTo(List.of(3, 3));
    }
  }

  @Nested
  class Shift {
    @ParameterizedTest
    @CsvSource({"0, true", "43199999, true", "43200000, false", "-1, false"})
    void theCautionHoldsForTwelveHoursAndNotBeforeItWasConfirmed(long ageMs, boolean stands) {
      assertThat(
              run(
                  "caution.js",
                  "return m.stands({ who: 'op-17', at: '2026-11-25T06:00:00.000Z' }, Date.parse('2026-11-25T06:00:00.000Z') + "
                      + ageMs
                      + ")"))
          .isEqualTo(stands);
    }
  }

  @Nested
  class Devices {
    @Test
    void aBrowserThatKeepsAVoiceProcessingOnIsRefused() {
      for (String kept :
          List.of("echoCancellation", "noiseSuppression", "autoGainControl", "voiceIsolation")) {
        assertThat(checked("{ channelCount: 2, " + kept + ": true }"))
            .as(kept)
            .isEqualTo("screen.sound.problem.voice");
      }
      assertThat(checked("{ channelCount: 2, echoCancellation: 'all' }"))
          .isEqualTo("screen.sound.problem.voice");
      assertThat(checked("{ channelCount: 1, echoCancellation: false }"))
          .isEqualTo("screen.sound.problem.mono");
      assertThat(checked("{ channelCount: 2, echoCancellation: false }")).isEqualTo("good");
    }

    private Object checked(String settings) {
      return run(
          "devices.js",
          "try { m.check("
              + settings
              + ", { id: '1', label: 'Mics' }, 2); return 'good' } catch (e) { return e.key }");
    }

    @Test
    void aReplacedDeviceOfTheSameNameIsFoundButIsNotTheVeryOne() {
      String there =
          "{ inputs: [{ id: 'new', label: 'Mics' }], outputs: [{ id: 'o', label: 'Out' }] }";
      String choice =
          "{ inputs: [{ id: 'old', label: 'Mics' }], output: { id: 'o', label: 'Out' }, swapped: false }";
      assertThat(
              run("devices.js", "return m.present(%s, %s).inputs[0].id".formatted(choice, there)))
          .isEqualTo("new");
      assertThat(run("devices.js", "return m.missing(%s, %s).label".formatted(choice, there)))
          .isEqualTo("Mics");
    }
  }

  @Nested
  class Levels {
    @Test
    void holdAPeakForAWhileAndThenFollow() {
      assertThat(
              run(
                  "levels.js",
                  """
                  const levels = new m.Levels(1000), step = (peak, frames) => levels.take({ frames, peak: [peak, 0], square: [peak * peak * frames, 0], absent: false }).left
                  return [step(1, 100).holdDb, step(0.1, 1400).holdDb, step(0.1, 200).holdDb, step(0.1, 100).rmsDb].map(db => db.toFixed(1))"""))
          .isEqualTo(List.of("0.0", "0.0", "-20.0", "-20.0"));
    }
  }

  @Nested
  class Wiring {
    @ParameterizedTest
    @CsvSource({
      "left, 40, 3, own",
      "left, 3, 40, crossed",
      "left, 40, 35, both",
      "left, 4, 2, none",
      "right, 3, 40, own",
      "right, 40, 3, crossed"
    })
    void isToldByWhichMicrophoneHearsTheTone(String side, int left, int right, String meaning) {
      assertThat(
              run(
                  "tone.js",
                  "return m.wiring('%s', { left: %d, right: %d })".formatted(side, left, right)))
          .isEqualTo(meaning);
    }
  }
}
