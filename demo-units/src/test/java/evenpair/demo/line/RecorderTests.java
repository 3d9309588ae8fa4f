package evenpair.demo.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Response;
import evenpair.acoustics.UnusableCapture;
import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Fault;
import evenpair.demo.earpiece.Mounting;
import evenpair.tolerance.Channel;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RecorderTests {
  private static final Bench BENCH = Bench.LINE.get(0);
  private static final Recorder RECORDER = new Recorder(Heard.STIMULUS, Take.LATEST_START_SECONDS);
  private static final LineRecorder LINE = new LineRecorder(Heard.STIMULUS, 1);

  private static byte[] nominal(Cable cable, double startSeconds) {
    Take take = new Take(startSeconds, Take.Flaw.NONE);
    return RECORDER.record(
        BENCH,
        Channel.LEFT,
        Design.SEDGE_2.nominal(),
        cable,
        Mounting.NOMINAL,
        take,
        new SplittableRandom(4));
  }

  private static DemoUnit unit(Fault fault) {
    return DemoUnit.build("SG2-009999", "SW-1", Design.SEDGE_2, fault, Channel.RIGHT, 5);
  }

  @Nested
  class ACapture {
    @ParameterizedTest
    @CsvSource({"plain, 0.05", "warm, 0.21", "lively, 0.45"})
    void showsTheSimulatedResponseAtTheDesignsDrive(String tuning, double startSeconds)
        throws Exception {
      Cable cable = ProductFile.read("sedge-2").cable(tuning);

      Curve heard =
          Heard.channel(nominal(cable, startSeconds), BENCH, Channel.LEFT, cable, Design.SEDGE_2)
              .level();

      double[] truth = Golden.of(Design.SEDGE_2, cable).levelDb();
      // The bar of the analysis is 0.05 dB without noise; the room's noise, some 55 dB below, adds
      // its scatter.
      for (int i = 0; i < Grid.POINTS; i++) {
        assertThat(heard.at(i)).as("%s Hz", Grid.label(i)).isCloseTo(truth[i], within(0.1));
      }
    }

    @Test
    void beginsWhenItWasToldTo() throws Exception {
      Response response = Heard.response(nominal(ProductFile.read("sedge-2").cable("plain"), 0.25));

      // The earpiece's own delay is below 1 ms.
      assertThat(response.delaySeconds()).isCloseTo(0.25, within(0.001));
    }

    @Test
    void isTheSameBytesForTheSameSeed() {
      Cable cable = ProductFile.read("sedge-2").cable("plain");
      LineRecorder.PairCapture first = LINE.inspect(unit(Fault.NONE), BENCH, cable, 1);
      LineRecorder.PairCapture again =
          new LineRecorder(Heard.STIMULUS, 1).inspect(unit(Fault.NONE), BENCH, cable, 1);

      assertThat(again.left()).isEqualTo(first.left());
      assertThat(again.right()).isEqualTo(first.right());
    }

    @Test
    void isAnotherForAnotherTrySeedOrBench() {
      Cable cable = ProductFile.read("sedge-2").cable("plain");
      byte[] first = LINE.inspect(unit(Fault.NONE), BENCH, cable, 1).left();

      assertThat(LINE.inspect(unit(Fault.NONE), BENCH, cable, 2).left()).isNotEqualTo(first);
      assertThat(LINE.inspect(unit(Fault.NONE), Bench.LINE.get(1), cable, 1).left())
          .isNotEqualTo(first);
      assertThat(
              new LineRecorder(Heard.STIMULUS, 2).inspect(unit(Fault.NONE), BENCH, cable, 1).left())
          .isNotEqualTo(first);
    }

    @Test
    void hasItsChannelsEquallyLongAndNotAlike() {
      LineRecorder.PairCapture pair =
          LINE.inspect(unit(Fault.NONE), BENCH, ProductFile.read("sedge-2").cable("plain"), 1);

      assertThat(pair.left()).hasSameSizeAs(pair.right()).isNotEqualTo(pair.right());
    }
  }

  @Nested
  class AMishap {
    private final Cable plain = ProductFile.read("sedge-2").cable("plain");

    @Test
    void clipsTheFirstCaptureAndSparesTheSecond() throws Exception {
      byte[] first = LINE.inspect(unit(Fault.CLIPPED_CAPTURE), BENCH, plain, 1).left();
      byte[] second = LINE.inspect(unit(Fault.CLIPPED_CAPTURE), BENCH, plain, 2).left();

      assertThatExceptionOfType(UnusableCapture.class)
          .isThrownBy(() -> Heard.response(first))
          .satisfies(e -> assertThat(e.flaw()).isEqualTo(UnusableCapture.Flaw.CLIPPED));
      assertThat(Heard.response(second).peak()).isLessThan(0.5);
    }

    @Test
    void drownsTheFirstCaptureInNoiseAndSparesTheSecond() throws Exception {
      Curve first =
          Heard.response(LINE.inspect(unit(Fault.NOISY_CAPTURE), BENCH, plain, 1).left())
              .signalToNoise();
      Curve second =
          Heard.response(LINE.inspect(unit(Fault.NOISY_CAPTURE), BENCH, plain, 2).left())
              .signalToNoise();

      // The demo's limit sets ask for 30 dB in every region.
      assertThat(first.mean(new Band(20, 200))).isLessThan(25);
      assertThat(first.mean(new Band(200, 5000))).isLessThan(30);
      assertThat(second.mean(new Band(20, 200))).isGreaterThan(45);
    }

    @Test
    void leaksInTheFirstMountingOfTheFaultySideOnly() {
      LineRecorder.PairCapture first = LINE.inspect(unit(Fault.LEAKY_SEAT), BENCH, plain, 1);
      LineRecorder.PairCapture second = LINE.inspect(unit(Fault.LEAKY_SEAT), BENCH, plain, 2);

      assertThat(first.rightMounting().leakHz()).isPositive();
      assertThat(first.leftMounting().leakHz()).isZero();
      assertThat(second.rightMounting().leakHz()).isZero();
    }
  }

  @Nested
  class TheSwapStudy {
    @Test
    void showsTheBenchsOwnDifferenceAsHalfTheDifferenceOfTheTwoCurves() throws Exception {
      DemoUnit reference = DemoBatch.reference(Design.SEDGE_2);
      double[] own = new double[Grid.POINTS];
      for (int seating = 1; seating <= 3; seating++) {
        LineRecorder.PairCapture marked = LINE.reference(reference, BENCH, false, seating);
        LineRecorder.PairCapture swapped = LINE.reference(reference, BENCH, true, seating);
        for (int i = 0; i < own.length; i++) {
          own[i] += (difference(marked, i) + difference(swapped, i)) / 6;
        }
      }
      for (int i = 0; i < own.length; i++) {
        // What is left is seating: six mountings whose depth scatters by 0.7 %, which is 0.2 dB at
        // most below 16 kHz, and
        // whose bass scatters by 0.1 dB; a mean over six of them stays within 0.25 dB.
        if (Grid.label(i) <= 16_000) {
          double calibrated = own[i] + gainDifference();
          assertThat(calibrated)
              .as("%s Hz", Grid.label(i))
              .isCloseTo(BENCH.difference().db(Grid.hz(i)), within(0.25));
        }
      }
    }

    /**
     * Left minus right of what lies on the bench, dB re full scale; sums of both halves hold the
     * bench's part twice.
     */
    private double difference(LineRecorder.PairCapture pair, int index) throws UnusableCapture {
      return Heard.response(pair.left()).level().at(index)
          - Heard.response(pair.right()).level().at(index);
    }

    private double gainDifference() {
      return 20 * Math.log10(BENCH.leftPascalPerFullScale() / BENCH.rightPascalPerFullScale());
    }
  }
}
