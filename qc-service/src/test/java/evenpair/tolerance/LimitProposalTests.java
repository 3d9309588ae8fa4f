package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.statistics.CoverageRank;
import evenpair.tolerance.LimitProposal.Scaled;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LimitProposalTests {
  private static final LimitSet SET = Pairs.plain();
  private static final List<Optional<Uncertainty>> NOTHING = List.of(Optional.empty());

  private static PairTable line(int pairs, long seed) {
    PairTable table = new PairTable(SET, FLAT);
    Random random = new Random(seed);
    for (int row = 0; row < pairs; row++) {
      table.add(0, Pairs.random(random, 0.2, 0.3, 0.1), Pairs.random(random, 0.2, 0.3, 0.1));
    }
    return table;
  }

  private static int[] rows(int from, int to) {
    return IntStream.range(from, to).toArray();
  }

  @Nested
  class AShape {
    @Test
    void isMeanAndSpreadOfBothChannelsAndTheMeanSquareOfTheDifference() {
      // at 5 kHz, outside the alignment band: left +1 and +3, right 0 and 0 dB beside a flat 100 dB
      PairTable table = new PairTable(SET, FLAT);
      for (double bump : new double[] {1, 3}) {
        table.add(0, Pairs.moved(Pairs.flat(100), 5000, bump), Pairs.flat(100));
      }

      LimitProposal.Shape shape = new LimitProposal(SET, table, rows(0, 2)).shape();

      int i = Grid.nearest(5000);
      // by hand: mean of 1, 3, 0, 0 is 1; squares about it 0+4+1+1 = 6, over 3; rounding of floats
      assertThat(shape.centre()[i]).isCloseTo(1, within(1e-6));
      assertThat(shape.scale()[i]).isCloseTo(Math.sqrt(2), within(1e-6));
      assertThat(shape.differenceScale()[i]).isCloseTo(Math.sqrt(5), within(1e-6));
      assertThat(shape.scale()[0]).as("alike to the last bit").isEqualTo(0.01);
    }

    @Test
    void needsTwoUnits() {
      PairTable table = line(3, 1);
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new LimitProposal(SET, table, rows(0, 1)));
    }
  }

  @Nested
  class TheScale {
    @Test
    void isTheRankedNumberOfTheOtherHalf() {
      PairTable table = line(300, 2);
      LimitProposal proposal = new LimitProposal(SET, table, rows(0, 150));
      CoverageRank wanted = new CoverageRank(0.9, 0.95);

      double[] numbers = proposal.numbers(rows(150, 300), Scaled.ALL);
      Arrays.sort(numbers);

      assertThat(proposal.scale(rows(150, 300), wanted, Scaled.ALL))
          .contains(numbers[wanted.of(150).orElseThrow() - 1]);
    }

    @Test
    void isMissingWhereThereAreTooFewUnits() {
      LimitProposal proposal = new LimitProposal(SET, line(100, 3), rows(0, 50));

      assertThat(proposal.scale(rows(50, 100), new CoverageRank(0.98, 0.95), Scaled.ALL)).isEmpty();
    }

    @Test
    void countsAUnitWithoutDataAsFarOff() {
      PairTable table = line(10, 4);
      int row = table.add(0, Pairs.without(Pairs.flat(100), 30, 60), Pairs.flat(100));

      LimitProposal proposal = new LimitProposal(SET, table, rows(0, 10));

      assertThat(proposal.numbers(new int[] {row}, Scaled.ALL)[0]).isInfinite();
    }
  }

  @Nested
  class ProposedLimits {
    @ParameterizedTest
    @ValueSource(longs = {5, 6, 7, 8})
    void areKeptByEveryUnitWhoseNumberIsNotAboveTheScale(long seed) {
      PairTable table = line(240, seed);
      LimitProposal proposal = new LimitProposal(SET, table, rows(0, 120));
      double t =
          proposal.scale(rows(120, 240), new CoverageRank(0.9, 0.95), Scaled.ALL).orElseThrow();

      LimitSet set = proposal.limits(t, Scaled.ALL, NOTHING, 2);

      FlatJudge.Outcome outcome = new FlatJudge(set, FLAT, NOTHING).judge(table);
      double[] numbers = proposal.numbers(rows(0, 240), Scaled.ALL);
      for (int row = 0; row < 240; row++) {
        if (numbers[row] <= t) {
          // NEAR: on the rounded limit to within 1e-4 dB, which the judge itself would decide
          assertThat(outcome.state[row]).isIn(FlatJudge.Outcome.PASS, FlatJudge.Outcome.NEAR);
        }
      }
      assertThat(outcome.state).contains(FlatJudge.Outcome.FAIL);
    }

    @Test
    void areNoWiderThanTheNextTenthOfADecibel() {
      PairTable table = line(200, 9);
      LimitProposal proposal = new LimitProposal(SET, table, rows(0, 100));
      LimitProposal.Shape shape = proposal.shape();

      LimitSet set = proposal.limits(3, Scaled.ALL, NOTHING, 2);

      Region mid = set.regions().get(1);
      double highest =
          IntStream.rangeClosed(mid.band().firstIndex(), mid.band().lastIndex())
              .mapToDouble(i -> shape.centre()[i] + 3 * shape.scale()[i])
              .max()
              .orElseThrow();
      assertThat(mid.upper().start()).isBetween(highest, highest + 0.1);
      assertThat(mid.upper().start() * 10)
          .isCloseTo(Math.rint(mid.upper().start() * 10), within(1e-9));
      assertThat(mid.upper().end()).isEqualTo(mid.upper().start());
      assertThat(set.level().balanceDb())
          .isBetween(3 * shape.balanceScale(), 3 * shape.balanceScale() + 0.1);
      assertThat(set.version()).isEqualTo(2);
    }

    @Test
    void keepTheFormOfTheSetsLimitsAndHoldEveryPoint() {
      PairTable table = line(200, 10);
      LimitProposal proposal = new LimitProposal(SET, table, rows(0, 100));
      LimitProposal.Shape shape = proposal.shape();

      Region treble = proposal.limits(3, Scaled.ALL, NOTHING, 2).regions().get(2);

      for (int i = treble.band().firstIndex(); i <= treble.band().lastIndex(); i++) {
        double hz = Grid.hz(i);
        // the line is rounded outward, so that only its own arithmetic can fall short
        assertThat(treble.upper().at(hz, treble.band()))
            .isGreaterThanOrEqualTo(shape.centre()[i] + 3 * shape.scale()[i] - 1e-9);
        assertThat(treble.lower().at(hz, treble.band()))
            .isLessThanOrEqualTo(shape.centre()[i] - 3 * shape.scale()[i] + 1e-9);
        assertThat(treble.match().orElseThrow().at(hz, treble.band()))
            .isGreaterThanOrEqualTo(3 * shape.differenceScale()[i] - 1e-9);
      }
    }

    @Test
    void areWidenedByTheGuardBand() {
      LimitSet guarded = Pairs.deciding(SET, 1, false);
      PairTable table = line(100, 11);
      Curve u = Curve.from(hz -> 0.25);
      List<Optional<Uncertainty>> worth = List.of(Optional.of(new Uncertainty(u, u, 0.25, 0.25)));

      LimitSet plain = new LimitProposal(SET, table, rows(0, 50)).limits(3, Scaled.ALL, worth, 2);
      LimitSet wider =
          new LimitProposal(guarded, table, rows(0, 50)).limits(3, Scaled.ALL, worth, 2);

      // w = 1·2·0.25 dB, which is a whole number of steps
      assertThat(wider.regions().get(0).upper().start())
          .isCloseTo(plain.regions().get(0).upper().start() + 0.5, within(1e-9));
      assertThat(wider.level().balanceDb())
          .isCloseTo(plain.level().balanceDb() + 0.5, within(1e-9));
    }

    @Test
    void leaveAloneWhatIsNotScaled() {
      Scaled matchOnly = new Scaled(false, true, false, false);

      LimitSet set =
          new LimitProposal(SET, line(60, 12), rows(0, 30)).limits(2, matchOnly, NOTHING, 2);

      assertThat(set.level()).isEqualTo(SET.level());
      assertThat(set.regions().get(0).upper()).isEqualTo(SET.regions().get(0).upper());
      assertThat(set.regions().get(0).match()).isNotEqualTo(SET.regions().get(0).match());
    }
  }
}
