package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Phases at the grid points, re the arrival, and what polarity makes of them. */
class ResponsePhaseTests {
  private static final Captures RIG = new Captures(48_000);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(RIG.sweep);

  @Test
  void isThatOfTheFiltersLessTheArrival() throws Exception {
    FilterChain chain = Chains.named("an earphone", 48_000);
    Response response = ANALYSER.analyse(RIG.samples(RIG.through(chain, 0.35)));
    double late = response.arrivalSeconds() - 0.35;
    for (int i = 0; i < Grid.POINTS; i++) {
      double expected =
          Math.toDegrees(chain.response(Grid.hz(i)).getArgument()) + 360 * Grid.hz(i) * late;
      // a hundredth of a turn is far below what polarity needs; measured 0.05 degrees
      assertThat(Math.IEEEremainder(response.phaseDeg()[i] - expected, 360))
          .isCloseTo(0, within(0.5));
    }
  }

  @Test
  void tellsAReversedUnitFromAGoodOne() throws Exception {
    FilterChain good = Chains.named("an earphone", 48_000);
    List<Biquad> reversed = new ArrayList<>(good.filters());
    reversed.add(new Biquad(-1, 0, 0, 0, 0));
    Response one = ANALYSER.analyse(RIG.samples(RIG.noisy(RIG.through(good, 0.35), 40, 1)));
    Response other =
        ANALYSER.analyse(
            RIG.samples(RIG.noisy(RIG.through(new FilterChain(reversed, 48_000), 0.6), 40, 2)));
    double r =
        Polarity.correlation(
            one.level(), one.phaseDeg(), other.level(), other.phaseDeg(), new Band(100, 1000));
    assertThat(r).isLessThan(-0.99);
  }
}
