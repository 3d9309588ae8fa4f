package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PolarityTests {
  private static final double FS = 48_000;
  private static final Band MID = new Band(100, 1000);
  private static final FilterChain GOLDEN =
      FilterChain.of(
          FS,
          Biquad.highPass(25, 0.7, FS),
          Biquad.lowShelf(120, 4, 0.7, FS),
          Biquad.peak(2800, 8, 2, FS));

  /** Through stored 32-bit floats, as in the service. */
  private static Curve level(FilterChain chain) {
    return Curve.ofFloats(chain.curve().toFloats());
  }

  private static double[] phase(FilterChain chain, double delaySeconds, boolean reversed) {
    double[] phase = new double[Grid.POINTS];
    for (int i = 0; i < phase.length; i++) {
      double turned =
          Math.toDegrees(chain.response(Grid.hz(i)).getArgument()) + (reversed ? 180 : 0);
      phase[i] = (float) Math.IEEEremainder(turned - 360 * Grid.hz(i) * delaySeconds, 360);
    }
    return phase;
  }

  private static double against(
      FilterChain unit, double delaySeconds, boolean reversed, Band band) {
    return Polarity.correlation(
        level(unit),
        phase(unit, delaySeconds, reversed),
        level(GOLDEN),
        phase(GOLDEN, 0, false),
        band);
  }

  @Nested
  class Correlation {
    @Test
    void ofAResponseWithItselfIsOneAndReversedMinusOne() {
      // stored 32-bit phases are rounded by 1e-5 degrees: 1 − cos of that is nothing
      assertThat(against(GOLDEN, 0, false, MID)).isCloseTo(1, within(1e-6));
      assertThat(against(GOLDEN, 0, true, MID)).isCloseTo(-1, within(1e-6));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-0.0004, 0.0001, 0.0004})
    void findsTheSmallDelaysThatArrivalLeavesOpen(double delay) {
      // the lag is searched in steps of 1/32 period of 1 kHz: worst cos(π/32) at the band's top,
      // less below
      assertThat(against(GOLDEN, delay, false, MID)).isGreaterThan(0.99);
      assertThat(against(GOLDEN, delay, true, MID)).isLessThan(-0.99);
    }

    @Test
    void doesNotMindAnotherLevel() {
      FilterChain quiet =
          FilterChain.of(
              FS,
              Biquad.gain(-30),
              GOLDEN.filters().get(0),
              GOLDEN.filters().get(1),
              GOLDEN.filters().get(2));
      assertThat(against(quiet, 0, false, MID)).isCloseTo(1, within(1e-6));
    }

    @Test
    void holdsItsSignForAUnitOfAnotherShape() {
      FilterChain other =
          FilterChain.of(
              FS,
              Biquad.highPass(60, 0.7, FS),
              Biquad.peak(300, 4, 1, FS),
              Biquad.peak(600, -5, 2, FS));
      assertThat(against(other, 0.0001, false, MID)).isGreaterThan(0.8);
      assertThat(against(other, 0.0001, true, MID)).isLessThan(-0.8);
    }

    @Test
    void findsOneDriverReversedInItsOwnBandOnly() {
      // bass driver reversed below a crossover at 150 Hz: complex sum of the two branches
      Curve plain = summed(1);
      Curve reversed = summed(-1);
      Band bass = new Band(30, 80);
      Band treble = new Band(400, 1000);
      assertThat(Polarity.correlation(reversed, summedPhase(-1), plain, summedPhase(1), bass))
          .isLessThan(-0.9);
      assertThat(Polarity.correlation(reversed, summedPhase(-1), plain, summedPhase(1), treble))
          .isGreaterThan(0.9);
    }

    @Test
    void isSmallBetweenResponsesThatHaveNothingInCommon() {
      // phases that turn quickly and differently: no lag within half a millisecond brings them
      // together
      double[] turning = phase(GOLDEN, 0.020, false);
      double r =
          Polarity.correlation(level(GOLDEN), turning, level(GOLDEN), phase(GOLDEN, 0, false), MID);
      assertThat(Math.abs(r)).isLessThan(0.5);
    }

    private org.apache.commons.math3.complex.Complex sum(double hz, int bassSign) {
      return Biquad.lowPass(150, 0.7, FS)
          .response(hz, FS)
          .multiply(bassSign)
          .subtract(Biquad.highPass(150, 0.7, FS).response(hz, FS));
    }

    private Curve summed(int bassSign) {
      return Curve.from(hz -> 20 * Math.log10(sum(hz, bassSign).abs()));
    }

    private double[] summedPhase(int bassSign) {
      double[] phase = new double[Grid.POINTS];
      for (int i = 0; i < phase.length; i++) {
        phase[i] = Math.toDegrees(sum(Grid.hz(i), bassSign).getArgument());
      }
      return phase;
    }
  }

  @Nested
  class Refuses {
    @Test
    void aBandWithoutEnoughPointsOrWithoutData() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> against(GOLDEN, 0, false, new Band(1000, 1030)));
      double[] holes = GOLDEN.curve().toArray();
      holes[100] = Double.NaN;
      double[] phase = phase(GOLDEN, 0, false);
      assertThatIllegalStateException()
          .isThrownBy(
              () -> Polarity.correlation(Curve.of(holes), phase, GOLDEN.curve(), phase, MID));
      double[] phaseHoles = phase.clone();
      phaseHoles[100] = Double.NaN;
      assertThatIllegalArgumentException()
          .isThrownBy(
              () -> Polarity.correlation(GOLDEN.curve(), phaseHoles, GOLDEN.curve(), phase, MID))
          .withMessageContaining("355.0 Hz");
    }
  }
}
