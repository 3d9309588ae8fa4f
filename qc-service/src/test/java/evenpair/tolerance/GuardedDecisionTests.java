package evenpair.tolerance;

import static evenpair.tolerance.Pairs.FLAT;
import static evenpair.tolerance.Pairs.deciding;
import static evenpair.tolerance.Pairs.flat;
import static evenpair.tolerance.Pairs.moved;
import static evenpair.tolerance.Pairs.pair;
import static evenpair.tolerance.Pairs.plain;
import static evenpair.tolerance.Pairs.randomPair;
import static evenpair.tolerance.Pairs.without;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.tuple;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * The guarded rule, w = guard·U with U = 2u. Limits, uncertainties and deviations are quarters and
 * eighths, exact in binary, so that a value on a limit is on it.
 */
class GuardedDecisionTests {
  static final double GUARD = 1;

  /** u = 1/8 dB, so U = 1/4 dB. */
  static final Uncertainty EIGHTH = new Uncertainty(flat(0.125), flat(0.125), 0.125, 0.125);

  final Judge accepting = Judges.forLimits(deciding(plain(), GUARD, true), FLAT);
  final Judge refusing = Judges.forLimits(deciding(plain(), GUARD, false), FLAT);

  private static Judgement judge(Judge judge, MeasuredPair pair) {
    return judge.judge(pair, Optional.of(EIGHTH));
  }

  /** Both earpieces alike, so that only the window speaks. Its limit at 100 Hz is 2 dB. */
  private static MeasuredPair bass(double deviation) {
    Curve both = moved(flat(100), 100, deviation);
    return pair(both, both);
  }

  private static RegionResult window(Judgement judgement) {
    return judgement.results().stream()
        .filter(row -> row.check() == ReasonKind.WINDOW && "bass".equals(row.region()))
        .findFirst()
        .orElseThrow();
  }

  @Nested
  class ByTheMargin {
    @ParameterizedTest
    @CsvSource({
      "1.75,  PASS,             PASS, false",
      "1.875, CONDITIONAL_PASS, PASS, true",
      "2,     CONDITIONAL_PASS, PASS, true",
      "2.125, CONDITIONAL_FAIL, FAIL, true",
      "2.25,  CONDITIONAL_FAIL, FAIL, true",
      "2.375, FAIL,             FAIL, false",
      "-1.75, PASS,             PASS, false",
      "-2,    CONDITIONAL_PASS, PASS, true",
      "-2.25, CONDITIONAL_FAIL, FAIL, true",
      "-2.5,  FAIL,             FAIL, false"
    })
    void isPassConditionalPassConditionalFailOrFail(
        double deviation, CheckState state, Verdict verdict, boolean conditional) {
      Judgement judgement = judge(accepting, bass(deviation));

      assertThat(window(judgement).state()).isEqualTo(state);
      assertThat(window(judgement).guardDb()).isEqualTo(0.25);
      assertThat(judgement.verdict()).isEqualTo(verdict);
      assertThat(judgement.conditional()).isEqualTo(conditional);
    }

    /**
     * Guard factors of ILAC-G8's table (from memory): w = r·U. With u = 0.25 dB, U is 0.5 dB; the
     * deviation keeps the 2 dB limit by 0.375 dB.
     */
    @ParameterizedTest
    @CsvSource({"0.5, PASS", "0.75, PASS", "0.83, CONDITIONAL_PASS", "1, CONDITIONAL_PASS"})
    void takesTheGuardBandAsAMultipleOfU(double guard, CheckState state) {
      Judge judge = Judges.forLimits(deciding(plain(), guard, true), FLAT);
      Uncertainty u = new Uncertainty(flat(0.25), flat(0), 0, 0);

      assertThat(window(judge.judge(bass(1.625), Optional.of(u))).state()).isEqualTo(state);
    }

    @Test
    void failsAConditionalPassWhereTheSetRefusesIt() {
      Judgement judgement = judge(refusing, bass(1.875));

      assertThat(judgement.verdict()).isEqualTo(Verdict.FAIL);
      assertThat(judgement.conditional()).isTrue();
      assertThat(judgement.reasons())
          .extracting(Reason::state, Reason::guardDb, Reason::measuredDb)
          .containsOnly(tuple(CheckState.CONDITIONAL_PASS, 0.25, 1.875));
      assertThat(ReasonText.of(judgement.reasons().get(0)).key()).isEqualTo("reason.window.near");
    }

    @Test
    void namesAConditionalFailInItsSentence() {
      Reason reason = judge(accepting, bass(2.25)).reasons().get(0);

      assertThat(ReasonText.of(reason).key()).isEqualTo("reason.window.above.conditional");
      assertThat(ReasonText.of(reason).values()).containsEntry("guard", 0.25);
    }

    @Test
    void isConditionalOnlyIfNothingFailsOutright() {
      Curve both = moved(moved(flat(100), 100, 2.25), 8000, 20);

      assertThat(judge(accepting, pair(both, both)).conditional()).isFalse();
    }
  }

  @Nested
  class OfLevelBalanceAndMatch {
    @Test
    void isGuardedByTheirOwnUncertainties() {
      Uncertainty u = new Uncertainty(flat(0), flat(0.0625), 0.125, 0.25);
      // a_L = 1.375 of 1.5 (w 0.25); balance 0.75 of 1 (w 0.5); match 0.75 of 1 in mid (w 0.125)
      Judgement judgement =
          accepting.judge(pair(flat(101.375), flat(100.625)), Optional.of(u));

      assertThat(judgement.results())
          .filteredOn(row -> row.state() == CheckState.CONDITIONAL_PASS)
          .extracting(RegionResult::check, RegionResult::channel)
          .containsExactly(
              tuple(ReasonKind.LEVEL, Channel.LEFT), tuple(ReasonKind.BALANCE, null));
      assertThat(judgement.verdict()).isEqualTo(Verdict.PASS);
      assertThat(judgement.conditional()).isTrue();
    }

    @Test
    void foldsMatchIntoARefusedBalance() {
      // 0.875 apart: balance (1) and match in mid (1) lie inside w = 0.25 of their limits
      Judgement judgement = judge(refusing, pair(flat(100.875), flat(100)));

      assertThat(judgement.reasons()).hasSize(1);
      assertThat(judgement.reasons().get(0).kind()).isEqualTo(ReasonKind.BALANCE);
      assertThat(judgement.reasons().get(0).alsoRegions()).containsExactly("mid");
      assertThat(ReasonText.of(judgement.reasons().get(0)).key())
          .isEqualTo("reason.balance.near.also");
    }
  }

  @Nested
  class OverFrequency {
    @Test
    void takesTheGravestPointForTheStateAndTheNearestForTheMargin() {
      // at 50 Hz 0.5 inside with w = 1: conditional; at 100 Hz 0.25 inside with w = 0.25: pass
      Uncertainty u = new Uncertainty(moved(flat(0.125), 50, 0.375), flat(0), 0, 0);
      Curve both = moved(moved(flat(100), 50, 1.5), 100, 1.75);

      RegionResult row = window(accepting.judge(pair(both, both), Optional.of(u)));

      assertThat(row.marginDb()).isEqualTo(0.25);
      assertThat(row.atHz()).isEqualTo(Grid.hz(Grid.nearest(100)));
      assertThat(row.state()).isEqualTo(CheckState.CONDITIONAL_PASS);
    }

    @Test
    void givesTheReasonAtTheGravestPoint() {
      // at 50 Hz 1 outside with w = 1: conditional fail; at 100 Hz 0.5 outside with w = 0.25: fail
      Uncertainty u = new Uncertainty(moved(flat(0.125), 50, 0.375), flat(0), 0, 0);
      Curve both = moved(moved(flat(100), 50, 3), 100, 2.5);

      Judgement judgement = accepting.judge(pair(both, both), Optional.of(u));

      assertThat(judgement.conditional()).isFalse();
      assertThat(judgement.reasons().get(0).frequencyHz())
          .isEqualTo(Grid.hz(Grid.nearest(100)));
      assertThat(judgement.reasons().get(0).state()).isNull();
    }
  }

  @Nested
  class ThatCannotBeMade {
    @Test
    void isInvalidWithoutUncertaintyAndShowsNothingAsJudged() {
      Judgement judgement = accepting.judge(bass(0));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .containsExactly(Reason.of(ReasonKind.UNCERTAINTY_MISSING, null, null, null));
      assertThat(judgement.results()).isNotEmpty().noneMatch(RegionResult::judged);
    }

    @Test
    void isInvalidWhereTheUncertaintyDoesNotReachARegion() {
      Uncertainty cut = new Uncertainty(without(flat(0.1), 12_000, 20_000), flat(0.1), 0.1, 0.1);

      Judgement judgement = accepting.judge(bass(0), Optional.of(cut));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .extracting(Reason::kind, Reason::region)
          .containsExactly(tuple(ReasonKind.UNCERTAINTY_MISSING, "treble"));
      assertThat(judgement.results())
          .filteredOn(row -> "treble".equals(row.region()))
          .noneMatch(RegionResult::judged);
    }

    @Test
    void isInvalidWhereTheGuardBandLeavesNothingToPass() {
      // mid: half a window is 1.5 dB, its match limit 1 dB; U = 2 × 0.5625 = 1.125 dB
      Uncertainty wide = new Uncertainty(flat(0), moved(flat(0), 1000, 0.5625), 0, 0);

      Judgement judgement = accepting.judge(bass(0), Optional.of(wide));

      assertThat(judgement.verdict()).isEqualTo(Verdict.INVALID);
      assertThat(judgement.reasons())
          .containsExactly(
              new Reason(
                  ReasonKind.GUARD_TOO_WIDE, null, "mid", 1000.0, 1.125, 1.0, List.of()));
    }

    @Test
    void isInvalidWhereLevelOrBalanceLeaveNothingToPass() {
      Uncertainty wide = new Uncertainty(flat(0), flat(0), 1, 0.75);

      assertThat(accepting.judge(bass(0), Optional.of(wide)).reasons())
          .containsExactly(
              Reason.of(ReasonKind.GUARD_TOO_WIDE, null, 2.0, 1.5),
              Reason.of(ReasonKind.GUARD_TOO_WIDE, null, 1.5, 1.0));
    }

    @ParameterizedTest
    @CsvSource({"-0.1, 0, 0", "0, -1, 0", "0, 0, NaN", "0, 0, Infinity"})
    void refusesWhatIsNoUncertainty(double level, double offset, double balance) {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new Uncertainty(flat(level), flat(0), offset, balance))
          .withMessageContaining("0 dB or above");
    }
  }

  @Nested
  class BesideSimpleAcceptance {
    static LongStream seeds() {
      return LongStream.range(0, 50);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void isTheSameWithoutUncertaintyOfTheMeasurement(long seed) {
      Uncertainty none = new Uncertainty(flat(0), flat(0), 0, 0);

      Judgement guarded = refusing.judge(randomPair(seed), Optional.of(none));
      Judgement simple = Judges.forLimits(plain(), FLAT).judge(randomPair(seed));

      assertThat(guarded).isEqualTo(simple);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void neverPassesMoreThanItWhenItRefuses(long seed) {
      Verdict simple = Judges.forLimits(plain(), FLAT).judge(randomPair(seed)).verdict();

      if (judge(refusing, randomPair(seed)).verdict() == Verdict.PASS) {
        assertThat(simple).isEqualTo(Verdict.PASS);
      }
    }

    @Test
    void doesNotLookAtUncertaintyUnderASimpleSet() {
      Uncertainty wide = new Uncertainty(flat(9), flat(9), 9, 9);
      Judge simple = Judges.forLimits(plain(), FLAT);

      assertThat(simple.judge(bass(1.9), Optional.of(wide))).isEqualTo(simple.judge(bass(1.9)));
    }
  }
}
