package evenpair.demo.earpiece;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class EarpieceTests {
  private static final Earpiece SEDGE = Design.SEDGE_2.nominal();

  private static double level(Earpiece earpiece, Mounting mounting, double hz) {
    return earpiece.response(new double[] {hz}, mounting).levelDb(0);
  }

  /** Highest point between 5 and 11 kHz in steps of 5 Hz. */
  private static double lengthMode(Mounting mounting) {
    double[] hz = IntStream.range(0, 1200).mapToDouble(i -> 5000 + 5 * i).toArray();
    Phasors response = SEDGE.response(hz, mounting);
    int highest =
        IntStream.range(0, hz.length)
            .reduce((a, b) -> response.power(a) >= response.power(b) ? a : b)
            .orElseThrow();
    return hz[highest];
  }

  @Nested
  class ANominalEarpiece {
    @ParameterizedTest
    @EnumSource(Design.class)
    void givesItsLevelAtOneKilohertzAtItsDrive(Design design) {
      double pascalPerVolt =
          Math.sqrt(design.nominal().response(new double[] {1000}, Mounting.NOMINAL).power(0));
      double level = 20 * Math.log10(pascalPerVolt * design.millivoltsRms() / 1000 / 20e-6);

      // The demo's own choice of 94 to 100 dB SPL.
      assertThat(level).isBetween(94.0, 100.0);
    }

    @Test
    void isASumOfSixDriversOfWhichEachCanBeMissed() {
      assertThat(SEDGE.driverNames()).hasSize(6).doesNotHaveDuplicates();
    }

    @Test
    void refusesToChangeADriverItDoesNotHave() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> SEDGE.with("horn", Driver::dead))
          .withMessageContaining("horn")
          .withMessageContaining("upper tweeter");
    }

    @Test
    void hasItsLengthModeNearEightKilohertz() {
      // The branches' slope pulls the sum's peak a little away from the canal's own 8 kHz.
      assertThat(lengthMode(Mounting.NOMINAL)).isCloseTo(8000, within(400.0));
    }
  }

  @Nested
  class AMounting {
    @ParameterizedTest
    @CsvSource({"0.05", "0.10", "-0.10"})
    void movesTheCanalsResonanceByItsDepth(double depth) {
      Canal canal = new Canal(8000, 0.22);
      double[] nominal = {4000, 8000, 12_000};
      double[] moved = Arrays.stream(nominal).map(hz -> hz * (1 + depth)).toArray();

      Phasors before = canal.applyTo(Phasors.constant(nominal, 1), 0);
      Phasors after = canal.applyTo(Phasors.constant(moved, 1), depth);

      // The canal's factor depends on f/f_mode only.
      for (int i = 0; i < nominal.length; i++) {
        assertThat(after.levelDb(i)).isCloseTo(before.levelDb(i), within(1e-9));
      }
      assertThat(lengthMode(new Mounting(depth, 0, 0)) > lengthMode(Mounting.NOMINAL))
          .isEqualTo(depth > 0);
    }

    @Test
    void hasACanalThatRisesAsALossyHalfWave() {
      Phasors canal = new Canal(8000, 0.22).applyTo(Phasors.constant(new double[] {1, 8000}, 1), 0);

      // x/sin x: 1 for a short tube; at the mode x = π(1 − jη), |x| = π·√(1 + η²), |sin x| =
      // sinh(πη). By hand, η = 0.22:
      // 3.2167/0.7475 = 4.303, 12.68 dB.
      assertThat(canal.levelDb(0)).isCloseTo(0, within(1e-5));
      assertThat(canal.levelDb(1)).isCloseTo(12.68, within(0.01));
    }

    @Test
    void leaksAsAFirstOrderHighPass() {
      Mounting leaking = Mounting.NOMINAL.leaking(90);

      double atCorner = level(SEDGE, leaking, 90) - level(SEDGE, Mounting.NOMINAL, 90);
      double octaveBelow = level(SEDGE, leaking, 9) - level(SEDGE, leaking, 4.5);
      double tightOctave = level(SEDGE, Mounting.NOMINAL, 9) - level(SEDGE, Mounting.NOMINAL, 4.5);

      // −10·lg 2 at the corner, by definition; 6.02 dB an octave far below it, short of 0.03 dB at
      // a tenth of the corner.
      assertThat(atCorner).isCloseTo(-3.0103, within(1e-4));
      assertThat(octaveBelow - tightOctave).isCloseTo(6.02, within(0.05));
    }

    @Test
    void hardlyTouchesTheMidRangeWhenItLeaks() {
      double change =
          level(SEDGE, Mounting.NOMINAL.leaking(90), 1000) - level(SEDGE, Mounting.NOMINAL, 1000);

      // −10·lg(1 + 0.09²) = −0.035 dB
      assertThat(change).isCloseTo(-0.035, within(0.001));
    }
  }

  @Nested
  class AnAnalogueSection {
    @Test
    void hasTheTextbooksLevelsAtItsFrequency() {
      Phasors lowPass =
          Section.lowPass(500, 2).applyTo(Phasors.constant(new double[] {0, 500, 50_000}, 1));

      // |H(0)| = 1, |H(f0)| = Q, −40 dB a decade: two decades above it −80 dB.
      assertThat(lowPass.levelDb(0)).isCloseTo(0, within(1e-9));
      assertThat(lowPass.levelDb(1)).isCloseTo(20 * Math.log10(2), within(1e-9));
      assertThat(lowPass.levelDb(2)).isCloseTo(-80, within(0.01));
    }

    @Test
    void refusesAFrequencyThatIsNotAboveZero() {
      assertThat(List.of(0.0, -1.0, Double.NaN))
          .allSatisfy(
              hz -> assertThatIllegalArgumentException().isThrownBy(() -> Section.lowPass(hz, 1)));
    }
  }

  @Nested
  class ADelay {
    @Test
    void turnsThePhaseAndNothingElse() {
      Phasors delayed = Phasors.constant(new double[] {1000}, 1).delay(125e-6);

      // 1 kHz · 125 µs = an eighth of a turn
      assertThat(delayed.phaseDeg(0)).isCloseTo(-45, within(1e-9));
      assertThat(delayed.levelDb(0)).isCloseTo(0, within(1e-9));
    }
  }
}
