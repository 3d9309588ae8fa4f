package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.UnusableCapture.Flaw;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** The unit's response must come out however the amplifier before it bends the drive. */
class DriveTests {
  private static final double FS = 48_000;
  private static final Captures RIG = new Captures(FS);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(RIG.sweep);
  private static final FilterChain EARPHONE = Chains.named("an earphone", FS);
  private static final Band JUDGED = new Band(20, 16_000);

  /** An amplifier that is anything but flat: reversed, a coupling capacitor, a source impedance. */
  private static final FilterChain AMPLIFIER =
      FilterChain.of(
          FS,
          new Biquad(-0.7, 0, 0, 0, 0),
          Biquad.highPass(15, 0.6, FS),
          Biquad.peak(2500, 2.5, 3, FS),
          Biquad.highShelf(9000, -3, 0.7, FS));

  private static double[] drive(double start) {
    return RIG.through(AMPLIFIER, start);
  }

  private static double[] microphone(double start) {
    List<Biquad> both = new ArrayList<>(AMPLIFIER.filters());
    both.addAll(EARPHONE.filters());
    return RIG.through(new FilterChain(both, FS), start);
  }

  private static Response against(double[] microphone, double[] drive) throws UnusableCapture {
    return ANALYSER.analyseAgainst(RIG.samples(microphone), RIG.samples(drive));
  }

  @Test
  void goesOutOfTheLevelWhateverTheAmplifierDoes() throws Exception {
    // the bar for a capture without noise
    assertThat(Chains.worst(against(microphone(0.4), drive(0.4)).level(), EARPHONE, JUDGED))
        .isLessThan(0.05);
  }

  @Test
  void goesOutOfTheLevelInNoiseToo() throws Exception {
    double[] noisy = RIG.noisy(microphone(0.6), 50, 3);
    // the bar for noise 50 dB below the capture; a drive is recorded 70 dB above its noise easily
    assertThat(Chains.worst(against(noisy, RIG.noisy(drive(0.6), 70, 4)).level(), EARPHONE, JUDGED))
        .isLessThan(0.1);
  }

  @Test
  void leavesThePhaseOfTheUnitAlone() throws Exception {
    Response response = against(microphone(0.35), drive(0.35));
    double late = response.delaySeconds();
    for (int i = JUDGED.firstIndex(); i <= JUDGED.lastIndex(); i++) {
      double own = Math.toDegrees(EARPHONE.response(Grid.hz(i)).getArgument());
      double expected = own + 360 * Grid.hz(i) * late;
      // polarity needs a tenth of a turn; this is the bar of a response without drive
      assertThat(Math.IEEEremainder(response.phaseDeg()[i] - expected, 360))
          .as("%s Hz", Grid.label(i))
          .isCloseTo(0, within(0.5));
    }
  }

  @Test
  void measuresTheDelayFromTheDrive() throws Exception {
    double[] later = new double[20_000 + microphone(0.4).length];
    System.arraycopy(microphone(0.4), 0, later, 144, microphone(0.4).length);
    double near = against(microphone(0.4), drive(0.4)).delaySeconds();
    // 144 samples more of air are 3 ms more; to a hundredth of a sample
    assertThat(against(later, drive(0.4)).delaySeconds() - near)
        .isCloseTo(0.003, within(0.01 / FS));
  }

  @Test
  void isTheSameForBothMicrophonesIfAnalysedOnce() throws Exception {
    Drive once = ANALYSER.drive(RIG.samples(drive(0.4)));
    Response response = ANALYSER.analyseAgainst(RIG.samples(microphone(0.4)), once);
    assertThat(response.level()).isEqualTo(against(microphone(0.4), drive(0.4)).level());
    for (int i = JUDGED.firstIndex(); i <= JUDGED.lastIndex(); i++) {
      assertThat(once.level().at(i)).isCloseTo(AMPLIFIER.powerMeanDb(i), within(0.05));
    }
    assertThat(once.arrivalSeconds()).isCloseTo(0.4, within(0.0003));
  }

  @Test
  void countsTheNoiseOfBothChannels() throws Exception {
    int at = Grid.nearest(1000);
    double quiet = 60;
    double[] microphone = RIG.noisy(microphone(0.4), quiet, 1);
    double clean = against(microphone, drive(0.4)).signalToNoise().at(at);
    double[] drive = RIG.noisy(drive(0.4), 40, 2);
    double alone = ANALYSER.drive(RIG.samples(drive)).signalToNoise().at(at);
    double both = against(microphone, drive).signalToNoise().at(at);
    // powers add: 10^(−S/10) of each, by hand; rounding only
    double sum = Math.pow(10, -clean / 10) + Math.pow(10, -alone / 10);
    assertThat(both).isCloseTo(-10 * Math.log10(sum), within(1e-6)).isLessThan(clean - 3);
  }

  @Test
  void leavesTheHarmonicsToTheMicrophone() throws Exception {
    Drive drive = ANALYSER.drive(RIG.samples(drive(0.4)));
    Samples microphone = RIG.samples(RIG.noisy(microphone(0.4), 60, 1));
    Distortion against = ANALYSER.analyseAgainstWithDistortion(microphone, drive).distortion();
    Distortion alone = ANALYSER.analyseWithDistortion(microphone).distortion();
    assertThat(against.harmonics()).isEqualTo(alone.harmonics());
    assertThat(against.highOrder()).isEqualTo(alone.highOrder());
  }

  @Test
  void isRefusedWhereItDoesNotCarryTheStimulus() {
    double[] hum = new Random(5).doubles(90_000, -0.1, 0.1).toArray();
    UnusableCapture noise =
        catchThrowableOfType(UnusableCapture.class, () -> ANALYSER.drive(RIG.samples(hum)));
    assertThat(noise.flaw()).isEqualTo(Flaw.NO_SWEEP);
    UnusableCapture silent =
        catchThrowableOfType(
            UnusableCapture.class, () -> against(microphone(0.4), new double[90_000]));
    assertThat(silent.flaw()).isEqualTo(Flaw.SILENT);
  }
}
