package evenpair.tolerance;

import static evenpair.tolerance.Pairs.ALIGNMENT;
import static evenpair.tolerance.Pairs.flat;
import static evenpair.tolerance.Pairs.pair;
import static evenpair.tolerance.Pairs.without;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class TuningGuessTests {
  /** A step outside the alignment band: its r.m.s. over the band can be worked out by hand. */
  static Curve bassRaisedBy(double db) {
    return Curve.from(hz -> hz < 250 ? 100 + db : 100);
  }

  static final Map<String, GoldenResponse> GOLDENS =
      Map.of("plain", golden(bassRaisedBy(0)), "warm", golden(bassRaisedBy(6)));

  private static GoldenResponse golden(Curve level) {
    return new GoldenResponse(level, Optional.empty());
  }

  private static Optional<Reason> guess(String stated, Curve level) {
    return TuningGuess.otherThan(stated, pair(level, level), GOLDENS, ALIGNMENT);
  }

  @Test
  void namesTheTuningThatItSoundsLike() {
    Reason reason = guess("plain", bassRaisedBy(6)).orElseThrow();

    assertThat(reason.kind()).isEqualTo(ReasonKind.OTHER_TUNING);
    assertThat(reason.otherTuning()).isEqualTo("warm");
    assertThat(ReasonText.of(reason).values()).containsEntry("tuning", "warm");
  }

  @Test
  void saysHowFarItIsFromEach() {
    Reason reason = guess("plain", bassRaisedBy(6)).orElseThrow();

    // 6 dB at the 56 of 185 points of 50 Hz–10 kHz below 250 Hz: 6·√(56/185) = 3.30 dB; smoothing
    // blurs one point to each side of the step
    int below = Grid.nearest(250) - Grid.nearest(50);
    int all = Grid.nearest(10_000) - Grid.nearest(50) + 1;
    assertThat(reason.limitDb()).isCloseTo(6 * Math.sqrt((double) below / all), within(0.05));
    assertThat(reason.measuredDb()).isCloseTo(0, within(1e-9));
  }

  @Test
  void doesNotMindLevelOrASmallDefect() {
    assertThat(guess("plain", bassRaisedBy(0).plus(-9))).isEmpty();
    assertThat(guess("plain", bassRaisedBy(4))).isEmpty();
    assertThat(guess("warm", bassRaisedBy(6))).isEmpty();
  }

  @Test
  void looksAtBothEarpiecesTogether() {
    // one earpiece with 6 dB too much bass is a defect, not a tuning
    assertThat(
            TuningGuess.otherThan(
                "plain", pair(bassRaisedBy(6), bassRaisedBy(0)), GOLDENS, ALIGNMENT))
        .isEmpty();
  }

  @Test
  void guessesNothingFromACurveThatMissesAPoint() {
    assertThat(guess("plain", without(bassRaisedBy(6), 100, 100))).isEmpty();
  }

  @Test
  void refusesAStatedTuningWithoutGolden() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> guess("lively", flat(100)))
        .withMessageContaining("lively");
  }
}
