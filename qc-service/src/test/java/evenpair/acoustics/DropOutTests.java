package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.UnusableCapture.Flaw;
import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Samples lost, repeated or replaced while the sweep plays; and what only looks like it. */
class DropOutTests {
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

  @ParameterizedTest
  @CsvSource({"0.2, 64", "0.5, 128", "0.8, 128", "1.0, 480", "1.1, 128", "1.15, 960"})
  void isAGapFilledWithZeros(double at, int samples) {
    double[] capture = good();
    int from = (int) ((0.35 + at) * FS);
    Arrays.fill(capture, from, from + samples, 0);
    UnusableCapture refusal = refusal(capture);
    assertThat(refusal.flaw()).isEqualTo(Flaw.DROP_OUT);
    // named at either edge of the gap
    assertThat(refusal.atSeconds()).isBetween(from / FS - 0.001, (from + samples) / FS + 0.001);
    assertThat(refusal.measured()).isGreaterThan(refusal.allowed());
  }

  @ParameterizedTest
  @CsvSource({"0.25, 128", "0.5, 128", "0.75, 256", "0.95, 128", "1.1, 100"})
  void isABlockLost(double at, int samples) {
    double[] whole = good();
    int from = (int) ((0.35 + at) * FS);
    double[] capture = new double[whole.length];
    System.arraycopy(whole, 0, capture, 0, from);
    System.arraycopy(whole, from + samples, capture, from, whole.length - from - samples);
    UnusableCapture refusal = refusal(capture);
    assertThat(refusal.flaw()).isEqualTo(Flaw.DROP_OUT);
    assertThat(refusal.atSeconds()).isCloseTo(from / FS, within(0.002));
  }

  @ParameterizedTest
  @CsvSource({"0.3, 128", "0.6, 256", "0.9, 128"})
  void isABlockPlayedTwice(double at, int samples) {
    double[] whole = good();
    int from = (int) ((0.35 + at) * FS);
    double[] capture = new double[whole.length];
    System.arraycopy(whole, 0, capture, 0, from + samples);
    System.arraycopy(whole, from, capture, from + samples, whole.length - from - samples);
    UnusableCapture refusal = refusal(capture);
    assertThat(refusal.flaw()).isEqualTo(Flaw.DROP_OUT);
    assertThat(refusal.atSeconds()).isCloseTo((from + samples) / FS, within(0.002));
  }

  @Test
  void isAGapBetweenTwoZeroCrossingsThatMakesNoJump() {
    // found as a run of equal samples: 3 ms at about 520 Hz, begun and ended where the capture
    // crosses zero
    double[] capture = RIG.through(FilterChain.of(FS), 0.35);
    int from = crossing(capture, (int) ((0.35 + 0.616) * FS));
    int to = crossing(capture, from + 144);
    Arrays.fill(capture, from, to, 0);
    UnusableCapture refusal = refusal(capture);
    assertThat(refusal.flaw()).isEqualTo(Flaw.DROP_OUT);
    assertThat(refusal.atSeconds()).isCloseTo(from / FS, within(0.0001));
  }

  @Test
  void isNotFoundInAnyOfTheKnownChains() {
    for (double rate : new double[] {44_100, 48_000, 96_000}) {
      Captures rig = new Captures(rate);
      ResponseAnalyser analyser = new ResponseAnalyser(rig.sweep);
      Chains.all(rate)
          .forEach(
              (name, chain) -> {
                double[] capture = rig.noisy(rig.through(chain, 0.35), 20, name.hashCode());
                assertThatCode(() -> analyser.analyse(rig.samples(capture)))
                    .as(name)
                    .doesNotThrowAnyException();
              });
    }
  }

  @Test
  void isNotHardDistortionOrARattle() {
    // a unit's own fault: limited tops (30 % third harmonic) and a buzz 20 dB below them at each
    // period;
    // FAIL is for judging to say
    double[] capture = RIG.through(FilterChain.of(FS), 0.35);
    for (int n = 0; n < capture.length; n++) {
      double x = capture[n] / 0.25;
      double buzz = x > 0.97 ? 0.05 * Math.sin(n * 1.1) : 0;
      capture[n] = 0.25 * (Math.max(-0.5, Math.min(0.5, x)) + buzz);
    }
    accepts(capture);
  }

  private int crossing(double[] signal, int from) {
    int n = from;
    while (!(signal[n - 1] < 0 && signal[n] >= 0)) {
      n++;
    }
    return n;
  }
}
