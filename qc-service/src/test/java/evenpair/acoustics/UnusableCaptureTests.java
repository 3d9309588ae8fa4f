package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.UnusableCapture.Flaw;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class UnusableCaptureTests {
  private static final double FS = 48_000;
  private static final Captures RIG = new Captures(FS);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(RIG.sweep);
  private static final FilterChain EARPHONE = Chains.named("an earphone", FS);

  /** A good capture of an earphone, 60 dB above its noise, sweep at 350 ms. */
  private static double[] good() {
    return RIG.noisy(RIG.through(EARPHONE, 0.35), 60, 1);
  }

  private static UnusableCapture refusal(double[] capture) {
    return refusal(RIG.samples(capture));
  }

  private static UnusableCapture refusal(Samples capture) {
    UnusableCapture refusal =
        catchThrowableOfType(UnusableCapture.class, () -> ANALYSER.analyse(capture));
    assertThat(refusal).as("must be refused").isNotNull();
    return refusal;
  }

  private static void accepts(double[] capture) {
    assertThatCode(() -> ANALYSER.analyse(RIG.samples(capture))).doesNotThrowAnyException();
  }

  @Test
  void aGoodCaptureIsAccepted() {
    accepts(good());
  }

  @Nested
  class Clipped {
    @Test
    void isSeenFromThreeNeighboursAtFullScaleOn() {
      double[] capture = good();
      Arrays.fill(capture, 30_000, 30_002, 1);
      double[] three = capture.clone();
      three[30_002] = -1;
      UnusableCapture refusal = refusal(three);
      assertThat(refusal.flaw()).isEqualTo(Flaw.CLIPPED);
      assertThat(refusal.atSeconds()).isEqualTo(30_000 / FS);
      assertThat(refusal.measured()).isEqualTo(3);
      assertThat(refusal.allowed()).isEqualTo(2);
      assertThat(refusal.getMessage()).contains("CLIPPED", "0.6250 s");
    }

    @Test
    void isSeenInARealOverload() {
      // 30 dB too loud and cut at full scale, as a 16-bit converter would: largest positive sample
      // 32767/32768
      double[] capture = good();
      for (int n = 0; n < capture.length; n++) {
        capture[n] = Math.max(-1, Math.min(32_767 / 32_768.0, 300 * capture[n]));
      }
      assertThat(refusal(capture).flaw()).isEqualTo(Flaw.CLIPPED);
    }

    @Test
    void isSeenIn8BitWhoseLargestSampleIsLower() {
      double[] capture = RIG.through(FilterChain.of(FS, Biquad.gain(14)), 0.35);
      for (int n = 0; n < capture.length; n++) {
        capture[n] = Math.max(-127, Math.min(127, Math.rint(128 * capture[n]))) / 128;
      }
      assertThat(refusal(capture).flaw()).isEqualTo(Flaw.CLIPPED);
    }

    @Test
    void isNotALoudCaptureThatStaysBelowFullScale() {
      // the same largest value in a finer format is only a loud sample: flat tops of the lowest
      // frequencies touch it often
      double[] capture = RIG.noisy(RIG.through(FilterChain.of(FS), 0.35), 70, 3);
      double largest = Arrays.stream(capture).map(Math::abs).max().orElseThrow();
      accepts(Arrays.stream(capture).map(x -> x / largest * 127 / 128).toArray());
    }
  }

  @Nested
  class Silent {
    @Test
    void isDigitalSilence() {
      UnusableCapture refusal = refusal(new double[90_000]);
      assertThat(refusal.flaw()).isEqualTo(Flaw.SILENT);
      assertThat(refusal.measured()).isZero();
      assertThat(refusal.allowed()).isEqualTo(1e-6);
    }

    @Test
    void isACaptureWithoutSamples() {
      assertThat(refusal(new double[0]).flaw()).isEqualTo(Flaw.SILENT);
    }
  }

  @Nested
  class NoSweep {
    @Test
    void isNoise() {
      Random random = new Random(4);
      UnusableCapture noise = refusal(random.doubles(90_000, -0.1, 0.1).toArray());
      assertThat(noise.flaw()).isEqualTo(Flaw.NO_SWEEP);
      assertThat(noise.measured()).isLessThan(noise.allowed());
    }

    @ParameterizedTest
    @ValueSource(doubles = {50, 440, 1000, 9000})
    void isATone(double hz) {
      double[] tone = new double[90_000];
      for (int n = 0; n < tone.length; n++) {
        tone[n] = 0.2 * Math.sin(2 * Math.PI * hz * n / FS);
      }
      assertThat(refusal(tone).flaw()).isEqualTo(Flaw.NO_SWEEP);
    }

    @ParameterizedTest
    @CsvSource({
      "20, 20000, 1.0",
      "10, 22000, 0.9",
      "10, 22000, 1.5",
      "100, 10000, 1.2",
      "9.19, 20213, 1.306",
      "10.88, 23946, 1.1025"
    })
    // the last two: played at the wrong one of 44.1 and 48 kHz
    void isAnotherSweep(double fromHz, double toHz, double seconds) {
      Captures other = new Captures(new Sweep(fromHz, toHz, seconds, FS, 0.01, 0.35, 0.3, 0.25));
      assertThat(refusal(other.noisy(other.through(EARPHONE, 0.35), 60, 1)).flaw())
          .isEqualTo(Flaw.NO_SWEEP);
    }

    @Test
    void isASingleClick() {
      double[] click = new double[90_000];
      click[40_000] = 0.5;
      assertThat(refusal(click).flaw()).isEqualTo(Flaw.NO_SWEEP);
    }

    @Test
    void isNotASweepInLoudNoise() throws Exception {
      // noise as loud as the sweep: found, and its low signal-to-noise says the rest
      Response response =
          ANALYSER.analyse(RIG.samples(RIG.noisy(RIG.through(FilterChain.of(FS), 0.35), 0, 9)));
      assertThat(response.arrivalSeconds()).isCloseTo(0.35, within(0.0005));
      assertThat(response.signalToNoise().at(Grid.nearest(1000))).isLessThan(25);
    }
  }

  @Nested
  class Span {
    @ParameterizedTest
    @ValueSource(doubles = {0.25, 0.3, 0.7, 1.0})
    void mayBeginAnywhereBetweenAQuarterSecondAndASecond(double start) throws Exception {
      Response response = ANALYSER.analyse(RIG.samples(RIG.through(EARPHONE, start)));
      // the earphone's peak lies within a few samples of the sweep's first one
      assertThat(response.arrivalSeconds()).isCloseTo(start, within(0.0003));
      assertThat(response.delaySeconds()).isCloseTo(start - 0.35, within(0.0003));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.0, 0.1, 0.245})
    void isRefusedWhenTheRecordingBegunTooLate(double start) {
      UnusableCapture refusal = refusal(RIG.noisy(RIG.through(EARPHONE, start), 60, 1));
      assertThat(refusal.flaw()).isEqualTo(Flaw.BEGUN_TOO_LATE);
      assertThat(refusal.measured()).isCloseTo(start, within(0.0005));
      assertThat(refusal.allowed()).isEqualTo(0.25);
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.1, 0.4, 0.8})
    void isRefusedWhenTheSweepWasPlayingAlready(double missed) {
      double[] whole = RIG.noisy(RIG.through(EARPHONE, 0.35), 60, 1);
      double[] capture = Arrays.copyOfRange(whole, (int) ((0.35 + missed) * FS), whole.length);
      UnusableCapture refusal = refusal(capture);
      assertThat(refusal.flaw()).isEqualTo(Flaw.BEGUN_TOO_LATE);
      assertThat(refusal.measured()).isCloseTo(-missed, within(0.001));
      assertThat(refusal.atSeconds()).isZero();
    }

    @ParameterizedTest
    @ValueSource(doubles = {1.03, 1.9, 3.3, 7.0})
    void isRefusedWhenTheRecordingBegunTooEarly(double start) {
      UnusableCapture refusal = refusal(RIG.noisy(RIG.through(EARPHONE, start), 60, 1));
      assertThat(refusal.flaw()).isEqualTo(Flaw.BEGUN_TOO_EARLY);
      assertThat(refusal.measured()).isCloseTo(start, within(0.001));
      assertThat(refusal.allowed()).isCloseTo(1.02, within(1e-9));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.24, 0.1, 0.0, -0.3})
    void isRefusedWhenTheRecordingEndedTooEarly(double after) {
      double[] whole = good();
      double[] capture = Arrays.copyOf(whole, (int) Math.round((0.35 + 1.2 + after) * FS));
      UnusableCapture refusal = refusal(capture);
      assertThat(refusal.flaw()).isEqualTo(Flaw.ENDED_TOO_EARLY);
      assertThat(refusal.measured()).isCloseTo(after, within(0.001));
      assertThat(refusal.allowed()).isEqualTo(0.25);
      assertThat(refusal.atSeconds()).isEqualTo(capture.length / FS);
    }

    @Test
    void isAcceptedWithAQuarterSecondAfterItsEnd() {
      accepts(
          Arrays.copyOf(
              RIG.through(FilterChain.of(FS), 0.35), (int) Math.round((0.35 + 1.2 + 0.25) * FS)));
    }
  }
}
