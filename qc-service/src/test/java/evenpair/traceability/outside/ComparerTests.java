package evenpair.traceability.outside;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import evenpair.traceability.outside.Comparison.Assumption;
import evenpair.traceability.outside.Comparison.Question;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** One pair measured twice, on invented curves whose differences are known exactly. */
class ComparerTests {
  /** Ours: left is 0.6 dB louder below 6 kHz and 1.2 dB above. */
  private static final Curve RIGHT =
      Curve.from(hz -> 100 + 8 * bump(hz, 3000) - 6 * bump(hz, 9000));

  private static final Curve LEFT = RIGHT.plus(Curve.from(hz -> hz < 6000 ? 0.6 : 1.2));

  private static final Map<String, Double> STUDIED = Map.of("bass", 0.3, "mid", 0.3, "treble", 0.8);

  private static double bump(double hz, double at) {
    double octaves = Math.log(hz / at) / Math.log(2);
    return Math.exp(-octaves * octaves * 4);
  }

  private static Region region(String name, double from, double to, double match) {
    return new Region(
        name,
        new Band(from, to),
        Span.constant(-2),
        Span.constant(2),
        Optional.of(Span.constant(match)),
        true);
  }

  private static LimitSet set() {
    return new LimitSet(
        "fern-1",
        "plain",
        1,
        EarSimulator.IEC_60318_4,
        "golden.csv",
        new Drive.Digital(-12),
        Smoothing.NONE,
        new LimitSet.LevelLimit(new Band(300, 3000), -2, 2, 1),
        List.of(
            region("bass", 20, 200, 1.5),
            region("mid", 200, 6000, 1),
            region("treble", 6000, 16000, 3)),
        List.of(),
        true,
        OptionalDouble.empty(),
        30,
        new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11000)),
        0.5,
        new LimitSet.DecisionRule(false, 0, true));
  }

  private static Ours ours() {
    return new Ours(LEFT, RIGHT, set(), STUDIED);
  }

  private static Theirs theirs(Curve left, Curve right) {
    return new Theirs(
        List.of(left),
        List.of(right),
        Optional.empty(),
        Optional.of(EarSimulator.IEC_60318_4),
        false,
        OptionalDouble.of(0.5),
        Optional.of(false));
  }

  private static RegionComparison region(Comparison comparison, String name) {
    return comparison.regions().stream()
        .filter(region -> region.region().equals(name))
        .findFirst()
        .orElseThrow();
  }

  /** Another seating on another coupler: some dB in both channels, a little between them. */
  private static Curve seated(Curve level, double bassDb) {
    return level.plus(-12.5).plus(Curve.from(hz -> hz < 100 ? bassDb : 0.1 * bassDb));
  }

  @Nested
  class WorkedCases {
    @Test
    void theSameTruthInAnotherSeatingAgrees() {
      Comparison found = Comparer.compare(ours(), theirs(seated(LEFT, -0.4), seated(RIGHT, -0.7)));
      assertThat(found.outcome()).isEqualTo(Outcome.AGREES);
      assertThat(found.swapped()).isFalse();
      assertThat(found.regions())
          .extracting(RegionComparison::outcome)
          .containsOnly(Outcome.AGREES);
      assertThat(found.assumptions()).isEmpty();
    }

    @Test
    void channelsSwappedByTheReviewerAreRecognised() {
      Comparison found = Comparer.compare(ours(), theirs(seated(RIGHT, -0.4), seated(LEFT, -0.5)));
      assertThat(found.swapped()).isTrue();
      assertThat(found.outcome()).isEqualTo(Outcome.AGREES);
      // shown the right way round
      assertThat(region(found, "mid").theirsDb()).isCloseTo(0.6, within(0.05));
    }

    @Test
    void aUnitThatChangedDisagreesAndOnlyWhereItDid() {
      Curve damaged = seated(LEFT, -0.4).plus(Curve.from(hz -> hz > 6000 ? -6 : 0));
      Comparison found = Comparer.compare(ours(), theirs(damaged, seated(RIGHT, -0.4)));
      assertThat(found.outcome()).isEqualTo(Outcome.DISAGREES);
      assertThat(found.swapped()).isFalse();
      assertThat(region(found, "treble").outcome()).isEqualTo(Outcome.DISAGREES);
      assertThat(region(found, "mid").outcome()).isEqualTo(Outcome.AGREES);
    }

    @Test
    void anotherSimulatorTypeComparesOnlyWhatBothSpecify() {
      Theirs other =
          new Theirs(
              List.of(LEFT),
              List.of(RIGHT),
              Optional.empty(),
              Optional.of(EarSimulator.IEC_60318_5),
              false,
              OptionalDouble.of(0.5),
              Optional.of(false));
      Comparison found = Comparer.compare(ours(), other);
      assertThat(found.shapeCompared()).isFalse();
      // both specify 125 Hz … 8 kHz: a sixth of bass, all of mid, 12 of 35 points of treble
      assertThat(region(found, "bass").outcome()).isEqualTo(Outcome.NOT_COMPARED);
      assertThat(region(found, "mid").outcome()).isEqualTo(Outcome.AGREES);
      assertThat(region(found, "treble").outcome()).isEqualTo(Outcome.NOT_COMPARED);
      assertThat(found.assumptions()).contains(Assumption.SIMULATOR);
    }

    @Test
    void anAverageOfBothChannelsSaysNothingOfAMismatch() {
      Theirs average =
          new Theirs(
              List.of(),
              List.of(),
              Optional.of(LEFT),
              Optional.empty(),
              false,
              OptionalDouble.empty(),
              Optional.empty());
      Comparison found = Comparer.compare(ours(), average);
      assertThat(found.averageOnly()).isTrue();
      assertThat(found.outcome()).isEqualTo(Outcome.NOT_COMPARED);
      assertThat(found.questions()).containsExactly(Question.CHANNELS);
    }
  }

  @Nested
  class Unknowns {
    private Theirs unknown(Curve left, Curve right) {
      return new Theirs(
          List.of(left),
          List.of(right),
          Optional.empty(),
          Optional.empty(),
          false,
          OptionalDouble.empty(),
          Optional.empty());
    }

    @Test
    void areStatedAsAssumedAndAskedFor() {
      Comparison found = Comparer.compare(ours(), unknown(LEFT, RIGHT));
      assertThat(found.assumptions())
          .contains(Assumption.THEIR_UNCERTAINTY, Assumption.NOT_LEVELLED, Assumption.SIMULATOR);
      assertThat(found.questions())
          .contains(Question.UNCERTAINTY, Question.SIMULATOR, Question.SEATINGS);
    }

    /** 1.5 dB alone is more than the limit of 1 dB in mid. */
    @Test
    void leaveNothingToTellWhereTheyExceedTheLimit() {
      Comparison found = Comparer.compare(ours(), unknown(LEFT, RIGHT));
      assertThat(region(found, "mid").outcome()).isEqualTo(Outcome.CANNOT_TELL);
      assertThat(found.outcome()).isEqualTo(Outcome.CANNOT_TELL);
    }

    @Test
    void doNotHideADifferenceThatStandsOut() {
      Comparison found = Comparer.compare(ours(), unknown(LEFT.plus(7), RIGHT));
      assertThat(found.outcome()).isEqualTo(Outcome.DISAGREES);
    }

    @Test
    void channelsLevelledEachForItselfAreSuspectedAndThenComparedInShape() {
      // brought together at 1 kHz, as is often done before publishing: the 0.6 dB there are gone
      Curve levelled = LEFT.plus(-0.6);
      assertThat(Comparer.compare(ours(), unknown(levelled, RIGHT)).questions())
          .contains(Question.LEVELLED);
      Theirs known =
          new Theirs(
              List.of(levelled),
              List.of(RIGHT),
              Optional.empty(),
              Optional.of(EarSimulator.IEC_60318_4),
              false,
              OptionalDouble.of(0.5),
              Optional.of(true));
      Comparison found = Comparer.compare(ours(), known);
      assertThat(region(found, "treble").theirsDb()).isCloseTo(0.6, within(0.05));
      assertThat(region(found, "treble").oursDb()).isCloseTo(0.6, within(0.05));
      assertThat(found.outcome()).isEqualTo(Outcome.AGREES);
    }
  }

  @Nested
  class Numbers {
    /**
     * Šidák's bound for the 95.45 % of k = 2. Reference: SciPy 1.17.1, norm.ppf(1 - (1 -
     * c**(1/r))/2) with c = 2*norm.cdf(2) - 1, four decimals.
     */
    @ParameterizedTest
    @CsvSource({"1, 2.0000", "3, 2.4228", "5, 2.6019", "8, 2.7586"})
    void theCoverageFactorGrowsWithTheNumberOfRegions(int regions, double factor) {
      assertThat(Comparer.coverage(regions)).isCloseTo(factor, within(5e-5)); // as rounded there
    }

    /**
     * ISO/IEC 17043's E_n (formula from memory) with k = 2 for one region, by hand: (94.15 −
     * 94.02)/√(0.12² + 0.08²) = 0.901388.
     */
    @Test
    void enIsTheDifferenceOverBothExpandedUncertainties() {
      LimitSet one =
          new LimitSet(
              "fern-1",
              "plain",
              1,
              EarSimulator.IEC_60318_4,
              "golden.csv",
              new Drive.Digital(-12),
              Smoothing.NONE,
              new LimitSet.LevelLimit(new Band(300, 3000), -2, 2, 1),
              List.of(region("mid", 200, 6000, 1)),
              List.of(),
              true,
              OptionalDouble.empty(),
              30,
              new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11000)),
              0.5,
              new LimitSet.DecisionRule(false, 0, true));
      Curve flat = Curve.from(hz -> 0);
      Ours reference = new Ours(flat.plus(94.02), flat, one, Map.of("mid", 0.08));
      Theirs measured =
          new Theirs(
              List.of(flat.plus(94.15)),
              List.of(flat),
              Optional.empty(),
              Optional.of(EarSimulator.IEC_60318_4),
              false,
              OptionalDouble.of(0.12),
              Optional.of(false));
      RegionComparison mid = Comparer.compare(reference, measured).regions().get(0);
      // a handful of roundings of doubles near 94
      assertThat(mid.en()).isCloseTo(0.901388, within(5e-7));
    }

    @Test
    void theirUncertaintyDoesNotShrinkByAveraging() {
      Theirs many =
          new Theirs(
              List.of(LEFT, LEFT, LEFT),
              List.of(RIGHT, RIGHT, RIGHT),
              Optional.empty(),
              Optional.of(EarSimulator.IEC_60318_4),
              false,
              OptionalDouble.of(0.5),
              Optional.of(false));
      assertThat(region(Comparer.compare(ours(), many), "mid").theirExpandedDb()).isEqualTo(0.5);
    }
  }
}
