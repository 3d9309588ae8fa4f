package evenpair.demo.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Samples;
import evenpair.acoustics.SineFit;
import evenpair.captures.WavAudio;
import evenpair.captures.WavReader;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Fault;
import evenpair.tolerance.Channel;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LineFilesTests {
  @Nested
  class AWavFile {
    @Test
    void holdsTwentyFourBitsASampleAndHoldsFullScale() {
      WavAudio audio = WavReader.read(Pcm24.mono(new double[] {0.5, -1, 2, -2, 1e-7}, 48_000));

      assertThat(audio.bitsPerSample()).isEqualTo(24);
      assertThat(audio.rateHz()).isEqualTo(48_000);
      // Largest code 2^23 − 1; 10⁻⁷ is 0.84 of a step and becomes one.
      double step = Math.pow(2, -23);
      float[] expected = {0.5f, -1, (float) (1 - step), -1, (float) step};
      assertThat(audio.channels().get(0).values()).containsExactly(expected);
    }
  }

  @Nested
  class TheCalibratorsTone {
    @Test
    void tellsTheMicrophonesSensitivity() {
      Bench bench = Bench.LINE.get(0);
      byte[] wav = new LineRecorder(Heard.STIMULUS, 1).tone(bench, Channel.RIGHT);
      Samples tone = WavReader.read(wav).channels().get(0);

      SineFit fit = SineFit.of(tone, 1000).orElseThrow();

      // 94 dB re 20 µPa is 1.00237 Pa r.m.s.; noise 50 dB below it is worth less than 0.01 %.
      assertThat(Math.sqrt(2) * 1.00237 / fit.amplitude())
          .isCloseTo(bench.rightPascalPerFullScale(), within(0.01));
    }
  }

  @Nested
  class ABench {
    @Test
    void readsItsDriveNearTheNominalOne() {
      // The stimulus at −12 dBFS must come within 0.5 dB of the drive that the limit set wants,
      // else the drive is wrong.
      for (Bench bench : Bench.LINE) {
        Design design =
            bench.earSimulator() == Design.SEDGE_2.earSimulator() ? Design.SEDGE_2 : Design.REED_1;
        double off = 20 * Math.log10(bench.readingMillivolts(-12) / design.millivoltsRms());
        assertThat(off).as(bench.name()).isBetween(-0.5, 0.5);
      }
    }
  }

  @Nested
  class ABatch {
    @Test
    void ofSedgeHasFortyPairsWithEveryFaultAndMostlyGoodOnes() {
      DemoBatch batch = DemoBatch.sedge();

      assertThat(batch.units()).hasSize(40);
      assertThat(batch.units().stream().map(unit -> unit.fault()).distinct())
          .containsExactlyInAnyOrder(Fault.values());
      assertThat(batch.units().stream().filter(unit -> unit.fault() == Fault.NONE))
          .hasSizeGreaterThanOrEqualTo(24);
      assertThat(batch.units().get(16).serial()).isEqualTo("SG2-004217");
    }

    @Test
    void canBeCutDownToSomeOfItsPairs() {
      List<String> serials =
          DemoBatch.sedge().only(4, 1).units().stream().map(unit -> unit.serial()).toList();

      assertThat(serials).containsExactly("SG2-004204", "SG2-004201");
    }
  }

  @Nested
  class AProductFile {
    @Test
    void givesACableForEachTuning() {
      ProductFile file = ProductFile.read("sedge-2");

      assertThat(file.cables().stream().map(Cable::tuning))
          .containsExactly("plain", "level", "warm", "lively");
      assertThat(file.cables().stream().filter(Cable::required).map(Cable::tuning))
          .containsExactly("plain", "warm");
      assertThat(file.cable("plain").plain()).isTrue();
    }

    @Test
    void isMissedByName() {
      assertThatIllegalStateException()
          .isThrownBy(() -> ProductFile.read("sedge-9"))
          .withMessageContaining("sedge-9");
    }
  }

  @Nested
  class AUsbCable {
    @Test
    void drivesAsAPlainOneDoesThroughAStraightWire() {
      Cable straight = Cable.usb("straight", false, List.of(), 48_000);
      double peak = Math.pow(10, -12.0 / 20);

      double[] volts = straight.drive(new double[] {peak}, Double.NaN);

      assertThat(volts[0] / Math.sqrt(2)).isCloseTo(0.180, within(1e-12));
    }

    @Test
    void leavesTheStimulusUntouched() {
      double[] stimulus = {0.1, -0.2};
      ProductFile.read("sedge-2").cable("plain").drive(stimulus, 3);

      assertThat(Arrays.stream(stimulus)).containsExactly(0.1, -0.2);
    }
  }
}
