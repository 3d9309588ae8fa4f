package evenpair.demo.earpiece;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Grid;
import evenpair.tolerance.Channel;
import java.util.List;
import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class DemoUnitTests {
  private static final double[] HZ = Grid.frequencies();

  private static DemoUnit unit(Fault fault, Channel side) {
    return DemoUnit.build("SG2-009999", "SW-1", Design.SEDGE_2, fault, side, 5);
  }

  /** Level of the faulty unit minus that of the same unit without the fault, dB. */
  private static List<Double> change(Fault fault, Channel side, Channel looked) {
    Phasors with = unit(fault, side).sides().of(looked).response(HZ, Mounting.NOMINAL);
    Phasors without = unit(Fault.NONE, side).sides().of(looked).response(HZ, Mounting.NOMINAL);
    return IntStream.range(0, HZ.length)
        .mapToDouble(i -> with.levelDb(i) - without.levelDb(i))
        .boxed()
        .toList();
  }

  private static double at(List<Double> curve, double hz) {
    return curve.get(Grid.nearest(hz));
  }

  @Nested
  class Spreading {
    @Test
    void isTheSameForTheSameSeedAndSerial() {
      assertThat(unit(Fault.NONE, Channel.LEFT)).isEqualTo(unit(Fault.NONE, Channel.LEFT));
    }

    @Test
    void isAnotherForAnotherSerialOrSeed() {
      Sides sides = unit(Fault.NONE, Channel.LEFT).sides();

      assertThat(
              DemoUnit.build("SG2-009998", "SW-1", Design.SEDGE_2, Fault.NONE, Channel.LEFT, 5)
                  .sides())
          .isNotEqualTo(sides);
      assertThat(
              DemoUnit.build("SG2-009999", "SW-1", Design.SEDGE_2, Fault.NONE, Channel.LEFT, 6)
                  .sides())
          .isNotEqualTo(sides);
      assertThat(sides.left()).isNotEqualTo(sides.right());
    }

    @Test
    void hasNoTails() {
      SplittableRandom random = new SplittableRandom(3);

      assertThat(IntStream.range(0, 5000).mapToObj(i -> Spread.bounded(random)))
          .allMatch(value -> Math.abs(value) <= 2)
          .anyMatch(value -> value > 1.9)
          .anyMatch(value -> value < -1.9);
    }
  }

  @Nested
  class AFault {
    @Test
    void leavesAGoodUnitAsItIs() {
      assertThat(change(Fault.NONE, Channel.LEFT, Channel.LEFT)).containsOnly(0.0);
    }

    @Test
    void thatIsADeadTweeterTakesTheTopAwayOnItsSideOnly() {
      List<Double> change = change(Fault.DEAD_TWEETER, Channel.RIGHT, Channel.RIGHT);

      // Beyond the widest treble limit of 4 dB, while the mid range keeps its limit of 1 dB.
      assertThat(at(change, 14_000)).isLessThan(-5);
      assertThat(Math.abs(at(change, 2000))).isLessThan(0.2);
      assertThat(change(Fault.DEAD_TWEETER, Channel.RIGHT, Channel.LEFT)).containsOnly(0.0);
    }

    @Test
    void thatIsADeadLowerTweeterTakesTheLengthModesRegionAway() {
      List<Double> change = change(Fault.DEAD_LOWER_TWEETER, Channel.LEFT, Channel.LEFT);

      assertThat(at(change, 9000)).isLessThan(-5);
      assertThat(Math.abs(at(change, 1000))).isLessThan(0.2);
    }

    @Test
    void thatIsSwappedPolarityTurnsEveryFrequencyByHalfATurn() {
      Phasors with =
          unit(Fault.SWAPPED_POLARITY, Channel.LEFT).sides().left().response(HZ, Mounting.NOMINAL);
      Phasors without =
          unit(Fault.NONE, Channel.LEFT).sides().left().response(HZ, Mounting.NOMINAL);

      for (int i = 0; i < HZ.length; i++) {
        assertThat(with.re(i)).isEqualTo(-without.re(i));
        assertThat(with.im(i)).isEqualTo(-without.im(i));
      }
    }

    @Test
    void thatIsAShiftedCrossoverDipsBetweenTheArmatures() {
      List<Double> change = change(Fault.SHIFTED_CROSSOVER, Channel.LEFT, Channel.LEFT);

      // Beyond the mid window of 1.5 dB, away from which bass and treble stay.
      assertThat(at(change, 1900)).isLessThan(-2);
      assertThat(Math.abs(at(change, 60))).isLessThan(0.7);
    }

    @Test
    void thatIsLowSensitivityLowersEverythingAlike() {
      assertThat(change(Fault.LOW_SENSITIVITY, Channel.LEFT, Channel.LEFT))
          .allSatisfy(db -> assertThat(db).isCloseTo(-2.8, within(1e-9)));
    }

    @Test
    void thatIsAMismatchMovesTheSidesApartByMoreThanTheMatchLimitButKeepsEachInsideItsWindow() {
      List<Double> left = change(Fault.MISMATCHED_PAIR, Channel.LEFT, Channel.LEFT);
      List<Double> right = change(Fault.MISMATCHED_PAIR, Channel.LEFT, Channel.RIGHT);

      assertThat(at(left, 4750) - at(right, 4750)).isGreaterThan(1.3);
      assertThat(left).allMatch(db -> Math.abs(db) < 1.5);
      assertThat(right).allMatch(db -> Math.abs(db) < 1.5);
    }

    @Test
    void thatIsWeakBassTakesTheLowestOctavesAndLittleElse() {
      List<Double> change = change(Fault.WEAK_BASS, Channel.RIGHT, Channel.RIGHT);

      // A first-order shelf of −5 dB with its corner at 180 Hz: √((g² + u²)/(1 + u²)) with u =
      // 20/180
      // is −4.91 dB; the bass window is 2 dB.
      assertThat(at(change, 20)).isCloseTo(-4.91, within(0.02));
      assertThat(Math.abs(at(change, 2000))).isLessThan(0.2);
    }

    @Test
    void thatBendsADriverLeavesItsLinearResponseAlone() {
      assertThat(change(Fault.BUZZING_DRIVER, Channel.LEFT, Channel.LEFT)).containsOnly(0.0);
      assertThat(change(Fault.DISTORTED_DRIVER, Channel.LEFT, Channel.LEFT)).containsOnly(0.0);
    }

    @Test
    void ofSeatOrCaptureLeavesTheUnitGood() {
      for (Fault fault :
          new Fault[] {
            Fault.LEAKY_SEAT,
            Fault.DEEP_SEAT,
            Fault.NEVER_SEALS,
            Fault.USB_FRAME_NOISE,
            Fault.CLIPPED_CAPTURE,
            Fault.NOISY_CAPTURE
          }) {
        assertThat(unit(fault, Channel.LEFT).sides())
            .isEqualTo(unit(Fault.NONE, Channel.LEFT).sides());
      }
    }
  }

  /**
   * Drivers add up with their phases, so that one decibel more in both tweeters is somewhat less in
   * the sum where the armatures still sound, and nothing below.
   */
  @Test
  void tweetersOfAnotherLotRaiseTheTrebleOnBothSides() {
    DemoUnit old = unit(Fault.NONE, Channel.LEFT);
    DemoUnit changed = old.withTweetersOf(1);
    for (Channel side : Channel.values()) {
      Phasors before = old.sides().of(side).response(HZ, Mounting.NOMINAL);
      Phasors after = changed.sides().of(side).response(HZ, Mounting.NOMINAL);
      assertThat(after.levelDb(Grid.nearest(500)) - before.levelDb(Grid.nearest(500)))
          .isCloseTo(0, within(0.02));
      for (double hz : new double[] {8000, 10_000, 12_500}) {
        int at = Grid.nearest(hz);
        assertThat(after.levelDb(at) - before.levelDb(at)).as("%s Hz", hz).isBetween(0.6, 1.2);
      }
    }
  }
}
