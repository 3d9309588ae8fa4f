package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static evenpair.tolerance.Pairs.flat;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.tolerance.MeasuredIdleNoise.Tone;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class IdleNoiseCheckTests {
  final Judge judge = Judges.forLimits(Pairs.limitingNoise(Pairs.plain(), 20), FLAT);

  static MeasuredIdleNoise noise(double dba, double floorDba, Tone... tones) {
    return new MeasuredIdleNoise(dba, floorDba, List.of(tones));
  }

  private Judgement judge(MeasuredIdleNoise left, MeasuredIdleNoise right) {
    return judge.judge(new MeasuredPair(channel(left), channel(right)));
  }

  private static MeasuredChannel channel(MeasuredIdleNoise noise) {
    return new MeasuredChannel(
        flat(100), Optional.empty(), Optional.empty(), Optional.ofNullable(noise));
  }

  @Test
  void atItsLimitPassesWithItsMarginInDba() {
    Judgement judgement = judge(noise(20, 10), noise(17.5, 10));

    assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
    RegionResult right = DistortionCheckTests.row(judgement, ReasonKind.IDLE_NOISE, Channel.RIGHT);
    // 2.5 is exact in binary
    assertThat(right.marginDb()).isCloseTo(2.5, within(0.0));
    assertThat(right.unit()).isEqualTo("dB(A)");
  }

  @Test
  void overItsLimitNamesEarpieceAndTheUsbFramesInIt() {
    Tone frame = new Tone(1000, 22, true);
    Tone other = new Tone(4321, 14, false);
    Tone microFrame = new Tone(8000, 12, true);

    Judgement judgement = judge(noise(24, 10, frame, other, microFrame), noise(15, 10));

    assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
    assertThat(judgement.reasons()).hasSize(1);
    Reason reason = judgement.reasons().get(0);
    assertThat(reason.channel()).isEqualTo(Channel.LEFT);
    assertThat(reason.measuredDb()).isEqualTo(24);
    assertThat(reason.usbLinesHz()).containsExactly(1000.0, 8000.0);
    assertThat(ReasonText.of(reason).key()).isEqualTo("reason.idle-noise.channel.numbers.usb");
    assertThat(ReasonText.of(reason).values()).containsEntry("lines", "1, 8");
  }

  @Test
  void withALimitWithin3DbOfTheStationsFloorIsNotJudged() {
    Judgement judgement = judge(noise(18, 17.5), noise(18, 17));

    assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
    assertThat(judgement.reasons())
        .containsExactly(Reason.notJudged("idle-noise-floor", Channel.LEFT, null));
  }

  @Test
  void ofAStationWithoutAFloorOnRecordIsNotJudged() {
    Judgement judgement = judge(noise(18, Double.NaN), noise(18, 10));

    assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
    assertThat(judgement.reasons())
        .containsExactly(Reason.notJudged("idle-noise-station", Channel.LEFT, null));
  }

  @Test
  void notRecordedIsInvalidAndSaysSo() {
    Judgement judgement = judge(noise(18, 10), null);

    assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
    assertThat(judgement.reasons())
        .containsExactly(Reason.notJudged("idle-noise", Channel.RIGHT, null));
  }
}
