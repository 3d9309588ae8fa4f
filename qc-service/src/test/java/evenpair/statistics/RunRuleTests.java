package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Patterns by hand: just complete, and one point short. */
class RunRuleTests {
  @Nested
  class BeyondLimits {
    @Test
    void onePointBeyondThreeSignals() {
      assertThat(RunRule.BEYOND_THREE.signals(0, 3.01, -2.99, -3.2)).containsExactly(1, 3);
    }

    @Test
    void twoOfThreeBeyondTwoSignalAtTheSecond() {
      assertThat(RunRule.TWO_OF_THREE_BEYOND_TWO.signals(2.1, 0, 2.1, 0)).containsExactly(2);
      assertThat(RunRule.TWO_OF_THREE_BEYOND_TWO.signals(2.1, 0, -2.1, 0, -2.2)).containsExactly(4);
      assertThat(RunRule.TWO_OF_THREE_BEYOND_TWO.signals(2.1, 0, 0, 2.1)).isEmpty();
    }

    @Test
    void fourOfFiveBeyondOneSignal() {
      assertThat(RunRule.FOUR_OF_FIVE_BEYOND_ONE.signals(1.1, 1.2, 0, 1.3, 1.4, 0))
          .containsExactly(4);
      assertThat(RunRule.FOUR_OF_FIVE_BEYOND_ONE.signals(1.1, 1.2, 0, 1.3, -1.4)).isEmpty();
    }
  }

  @Nested
  class Runs {
    @Test
    void onOneSideAreCountedWithoutThePointsOnTheCentre() {
      double[] nine = {.1, .2, .1, .3, .1, .2, .4, .1, .1};
      assertThat(RunRule.EIGHT_ON_ONE_SIDE.signals(nine)).containsExactly(7, 8);
      assertThat(RunRule.NINE_ON_ONE_SIDE.signals(nine)).containsExactly(8);
      nine[4] = 0;
      assertThat(RunRule.EIGHT_ON_ONE_SIDE.signals(nine)).isEmpty();
    }

    @Test
    void ofSixRisingPointsSignal() {
      assertThat(RunRule.SIX_RISING_OR_FALLING.signals(-1, -.5, 0, .1, .2, .3)).containsExactly(5);
      assertThat(RunRule.SIX_RISING_OR_FALLING.signals(1, .5, .2, .1, 0, -.3)).containsExactly(5);
      assertThat(RunRule.SIX_RISING_OR_FALLING.signals(-1, -.5, -.5, .1, .2, .3)).isEmpty();
    }

    @Test
    void ofFourteenInTurnSignal() {
      double[] saw = new double[14];
      for (int i = 0; i < saw.length; i++) {
        saw[i] = i % 2 == 0 ? 0.5 : -0.5;
      }
      assertThat(RunRule.FOURTEEN_ALTERNATING.signals(saw)).containsExactly(13);
      saw[7] = 0.6;
      assertThat(RunRule.FOURTEEN_ALTERNATING.signals(saw)).isEmpty();
    }

    @Test
    void ofFifteenTooNearOrEightTooFarSignal() {
      double[] near = new double[15];
      assertThat(RunRule.FIFTEEN_WITHIN_ONE.signals(near)).containsExactly(14);
      near[3] = 1.2;
      assertThat(RunRule.FIFTEEN_WITHIN_ONE.signals(near)).isEmpty();
      assertThat(RunRule.EIGHT_OUTSIDE_ONE.signals(1.1, -1.1, 1.2, -1.3, 1.1, 1.4, -1.2, 1.1))
          .containsExactly(7);
      assertThat(RunRule.EIGHT_OUTSIDE_ONE.signals(1.1, -1.1, 1.2, 0.9, 1.1, 1.4, -1.2, 1.1))
          .isEmpty();
    }
  }

  /**
   * How seldom chance makes the patterns: shares of independent normal points that complete one.
   * Beyond three: 0.0027. Nine on one side: 2·(1/2)⁹ = 0.0039. Six rising or falling: 2/6! =
   * 0.0028. Four standard errors in 200,000 points, of which neighbours hang together (a run of
   * nine may go on for two more on average, which at most doubles the error): 8·√(p/200000).
   */
  @Test
  void seldomSignalByChance() {
    double[] z = new Random(7870).doubles(200_000).map(Normal::quantile).toArray();

    share(RunRule.BEYOND_THREE, z, 0.0027);
    share(RunRule.NINE_ON_ONE_SIDE, z, 2 * Math.pow(0.5, 9));
    share(RunRule.SIX_RISING_OR_FALLING, z, 2.0 / 720);
  }

  private static void share(RunRule rule, double[] z, double expected) {
    double found = (double) rule.signals(z).length / z.length;
    assertThat(found)
        .as(rule.name())
        .isBetween(
            expected - 8 * Math.sqrt(expected / z.length),
            expected + 8 * Math.sqrt(expected / z.length));
  }
}
