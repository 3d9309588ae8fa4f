package evenpair.tolerance;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.PairFit.Earpiece;
import java.util.Arrays;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

class PairFitTests {
  private static final LimitSet SMOOTHED =
      Pairs.set(Smoothing.TWELFTH_OCTAVE, false, Pairs.BASS, Pairs.MID, Pairs.TREBLE);

  private static Uncertainty uncertainty(
      double level, double match, double offset, double balance) {
    return new Uncertainty(Curve.from(hz -> level), Curve.from(hz -> match), offset, balance);
  }

  @Nested
  class AgainstTheJudge {
    static Stream<Integer> seeds() {
      return IntStream.range(0, 300).boxed();
    }

    /** What may be paired is what the judge of whole pairs would pass, and nothing else. */
    @ParameterizedTest
    @MethodSource("seeds")
    void twoEarpiecesFitIfAndOnlyIfTheirPairPasses(int seed) {
      MeasuredPair one = Pairs.randomPair(2L * seed);
      MeasuredPair other = Pairs.randomPair(2L * seed + 1);
      PairFit fit = PairFit.of(SMOOTHED, Pairs.FLAT);
      Earpiece left = fit.look(one, Optional.empty()).get(Channel.LEFT);
      Earpiece right = fit.look(other, Optional.empty()).get(Channel.RIGHT);

      boolean fits =
          left.fault().isEmpty()
              && right.fault().isEmpty()
              && keeps(fit.limits(Optional.empty()), left, right);

      Judgement judged =
          Judges.forLimits(SMOOTHED, Pairs.FLAT).judge(new MeasuredPair(one.left(), other.right()));
      assertThat(fits).isEqualTo(judged.verdict() == Verdict.PASS);
    }

    @Test
    void theRandomPairsAreOfBothKinds() {
      long passes =
          seeds()
              .filter(
                  seed ->
                      Judges.forLimits(SMOOTHED, Pairs.FLAT)
                              .judge(
                                  new MeasuredPair(
                                      Pairs.randomPair(2L * seed).left(),
                                      Pairs.randomPair(2L * seed + 1).right()))
                              .verdict()
                          == Verdict.PASS)
              .count();

      assertThat(passes).isBetween(30L, 270L);
    }

    private static boolean keeps(PairFit.Limits limits, Earpiece left, Earpiece right) {
      return Math.abs(left.alignmentDb() - right.alignmentDb()) <= limits.balanceDb()
          && Arrays.stream(limits.required())
              .allMatch(
                  i -> Math.abs(left.levelDb()[i] - right.levelDb()[i]) <= limits.matchDb()[i]);
    }
  }

  @Nested
  class AnEarpieceByItself {
    @Test
    void failsByItsOwnLevelAndWindowOnly() {
      Curve loud = Pairs.flat(101.8);
      Curve bump = Pairs.moved(Pairs.flat(100), 1000, 1.6);

      Map<Channel, Earpiece> seen =
          PairFit.of(Pairs.plain(), Pairs.FLAT).look(Pairs.pair(loud, bump), Optional.empty());

      assertThat(seen.get(Channel.LEFT).fault())
          .map(RegionResult::check)
          .hasValue(ReasonKind.LEVEL);
      assertThat(seen.get(Channel.RIGHT).fault())
          .map(RegionResult::check)
          .hasValue(ReasonKind.WINDOW);
      assertThat(seen.get(Channel.RIGHT).fault()).map(RegionResult::region).hasValue("mid");
    }

    @Test
    void isNotBlamedForTheDifferenceToItsMate() {
      // ±1.2 dB: inside the level limits of ±1.5 dB, but 2.4 dB apart where 1 dB is allowed
      Map<Channel, Earpiece> seen =
          PairFit.of(Pairs.plain(), Pairs.FLAT)
              .look(Pairs.pair(Pairs.flat(101.2), Pairs.flat(98.8)), Optional.empty());

      assertThat(seen.values()).allMatch(earpiece -> earpiece.fault().isEmpty());
      // the median of a constant is the constant; 1e-9 dB is far above rounding at 100 dB (1e-14)
      assertThat(seen.get(Channel.LEFT).alignmentDb()).isCloseTo(1.2, within(1e-9));
    }

    @Test
    void withoutDataInARequiredRegionCannotBePaired() {
      Curve gap = Pairs.without(Pairs.flat(100), 50, 60);

      Map<Channel, Earpiece> seen =
          PairFit.of(Pairs.plain(), Pairs.FLAT)
              .look(Pairs.pair(gap, Pairs.flat(100)), Optional.empty());

      assertThat(seen.get(Channel.LEFT).fault())
          .hasValueSatisfying(
              f -> {
                assertThat(f.judged()).isFalse();
                assertThat(f.region()).isEqualTo("bass");
              });
      assertThat(seen.get(Channel.RIGHT).fault()).isEmpty();
    }
  }

  @Nested
  class UnderAGuardedSet {
    private final PairFit fit = PairFit.of(Pairs.deciding(Pairs.plain(), 1, true), Pairs.FLAT);

    @Test
    void limitsCountLessTheirGuardBandsEvenWhereConditionalPassesAreAccepted() {
      PairFit.Limits limits = fit.limits(Optional.of(uncertainty(0.2, 0.1, 0.1, 0.15)));

      // w = 1·2·u by hand: 1 − 0.2 in the mid region, 1 − 0.3 for the balance (rounding 1e-16)
      assertThat(limits.matchDb()[Grid.nearest(1000)]).isCloseTo(0.8, within(1e-12));
      assertThat(limits.balanceDb()).isCloseTo(0.7, within(1e-12));
    }

    @Test
    void refusesToGuessAnUncertainty() {
      assertThatIllegalArgumentException().isThrownBy(() -> fit.limits(Optional.empty()));
    }

    @Test
    void onOneStationTheLargerUncertaintyCounts() {
      Uncertainty both =
          PairFit.together(
              uncertainty(0.2, 0.1, 0.1, 0.15), uncertainty(0.2, 0.3, 0.1, 0.05), true);

      assertThat(both.matchDb().at(100)).isEqualTo(0.3);
      assertThat(both.balanceDb()).isEqualTo(0.15);
    }

    @Test
    void onTwoStationsNothingCancels() {
      Uncertainty both =
          PairFit.together(
              uncertainty(0.2, 0.1, 0.1, 0.15), uncertainty(0.4, 0.1, 0.2, 0.15), false);

      // by hand: √(0.04 + 0.01 + 0.16 + 0.04) = 0.5, √(0.01 + 0.04) = 0.2236; rounding 1e-16
      assertThat(both.matchDb().at(100)).isCloseTo(0.5, within(1e-12));
      assertThat(both.balanceDb()).isCloseTo(0.22360679774997896, within(1e-12));
    }
  }

  @Test
  void drawsAgainstTheGoldenResponseAndItsWindows() {
    PairFit.Lines lines = PairFit.of(Pairs.plain(), Pairs.FLAT).lines();
    int at = Grid.nearest(1000);

    assertThat(lines.upperDb()[at]).isEqualTo(101.5);
    assertThat(lines.lowerDb()[at]).isEqualTo(98.5);
    assertThat(lines.matchDb()[at]).isEqualTo(1.0);
    assertThat(lines.upperDb()[Grid.POINTS - 1]).as("20 kHz lies in no region").isNaN();
    assertThat(lines.regions()).extracting("name").containsExactly("bass", "mid", "treble");
  }
}
