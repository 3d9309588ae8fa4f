package evenpair.demo.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Grid;
import evenpair.acoustics.IdleNoise;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.captures.WavReader;
import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Fault;
import evenpair.tolerance.Channel;
import evenpair.tolerance.MeasuredDistortion;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BendingTests {
  private static final Bench BENCH = Bench.LINE.get(0);
  private static final LineRecorder LINE = new LineRecorder(Heard.STIMULUS, 1);
  private static final KnownBench STATION =
      new KnownBench(BENCH, new ResponseAnalyser(Heard.SWEEP));

  private static DemoUnit unit(Fault fault) {
    return DemoUnit.build("SG2-009999", "SW-1", Design.SEDGE_2, fault, Channel.LEFT, 5);
  }

  private static MeasuredDistortion left(Fault fault) throws Exception {
    byte[] wav = LINE.inspect(unit(fault), BENCH, LineRecorder.PLAIN, 1).left();
    return STATION
        .channel(wav, Channel.LEFT, LineRecorder.PLAIN, Design.SEDGE_2)
        .distortion()
        .orElseThrow();
  }

  private static double highOrder(MeasuredDistortion distortion, double fromHz, double toHz) {
    return IntStream.rangeClosed(Grid.nearest(fromHz), Grid.nearest(toHz))
        .mapToDouble(distortion.highOrderDb()::at)
        .max()
        .orElseThrow();
  }

  @Nested
  class ADynamicDriver {
    @Test
    void hasALittleSecondAndThirdHarmonicWhenGood() throws Exception {
      MeasuredDistortion good = left(Fault.NONE);
      int i = Grid.nearest(100);

      // Excursion at 100 Hz: 0.2546 V · |1/(1 − u² + ju/0.6)|, u = 100/350, which is 0.2465 V. H2 =
      // 0.022·x/2 = 0.271 %, H3 = 0.09·x²/4 = 0.137 % of the dynamic drivers' own sound; their
      // low-passes and the armatures change the sum's fundamental at 100 Hz by some 1 dB, the
      // unit's
      // spread of bending is within 2 · 15 % · √(1 + 0.38²), 2.5 dB.
      assertThat(good.harmonicsDb().get(0).at(i)).isCloseTo(20 * Math.log10(0.00271), within(4.0));
      assertThat(good.harmonicsDb().get(1).at(i)).isCloseTo(20 * Math.log10(0.00137), within(4.0));
    }

    @Test
    void hasHighOrdersInTheBassOnlyWhenItBuzzes() throws Exception {
      // The demo's limit is −50 dB over 100–700 Hz.
      assertThat(highOrder(left(Fault.NONE), 100, 700)).isLessThan(-60);
      assertThat(highOrder(left(Fault.BUZZING_DRIVER), 100, 700)).isGreaterThan(-47);
    }

    @Test
    void hasStrongLowOrdersAndNoHighOnesWhenItIsTorn() throws Exception {
      MeasuredDistortion torn = left(Fault.DISTORTED_DRIVER);

      // Twelve times a good one's: 21.6 dB, half a decibel for the noise in both.
      assertThat(torn.harmonicsDb().get(0).at(Grid.nearest(100)))
          .isCloseTo(
              left(Fault.NONE).harmonicsDb().get(0).at(Grid.nearest(100)) + 21.6, within(0.5));
      assertThat(highOrder(torn, 100, 700)).isLessThan(-60);
    }
  }

  @Nested
  class AnIdleCable {
    private IdleNoise heard(Fault fault) {
      LineRecorder.PairCapture capture =
          LINE.inspect(unit(fault), BENCH, ProductFile.read("sedge-2").cable("warm"), 1);
      return IdleNoise.of(WavReader.read(capture.idle().orElseThrow().left()).channels().get(0));
    }

    private double dba(IdleNoise noise) {
      return 20 * Math.log10(noise.weightedRms() * BENCH.pascalPerFullScale(Channel.LEFT) / 20e-6);
    }

    @Test
    void isAsQuietAsTheBenchAllows() {
      IdleNoise good = heard(Fault.NONE);

      // The demo's limit is 40 dB(A).
      assertThat(dba(good)).isLessThan(36);
      assertThat(good.tones()).isEmpty();
    }

    @Test
    void soundsAtMultiplesOfAKilohertzWhenItsSupplyIsBadlyFiltered() {
      IdleNoise bad = heard(Fault.USB_FRAME_NOISE);

      assertThat(dba(bad)).isGreaterThan(41);
      assertThat(bad.tones())
          .hasSizeGreaterThanOrEqualTo(8)
          .allMatch(tone -> tone.origin() != IdleNoise.Origin.UNNAMED);
    }

    @Test
    void isNotListenedToWithoutElectronics() {
      assertThat(List.of(LINE.inspect(unit(Fault.NONE), BENCH, LineRecorder.PLAIN, 1).idle()))
          .allMatch(idle -> idle.isEmpty());
    }
  }
}
