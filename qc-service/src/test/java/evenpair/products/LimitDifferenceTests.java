package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.tolerance.LimitSet;
import evenpair.web.TestTexts;
import evenpair.web.Texts;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class LimitDifferenceTests {
  private static final Texts TEXTS = TestTexts.real();

  private static List<String> words(String from, String to) {
    return LimitDifference.between(set(from), set(to)).stream()
        .map(change -> TEXTS.render(Locale.ENGLISH, "difference." + change.key(), change.values()))
        .toList();
  }

  private static LimitSet set(String yaml) {
    try {
      return LimitSetReader.read("test", Examples.bytes(yaml));
    } catch (UnreadableLimits e) {
      throw new AssertionError(e);
    }
  }

  /** Windows as in the demo's plain tuning, with one thing changed. */
  private static final String SET =
      """
      product: teal-1
      tuning: plain
      version: 1
      ear-simulator: IEC 60318-4
      golden: plain-golden.csv
      drive: {mv-rms: 180}
      smoothing: 1/12 octave
      level: {band-hz: [300, 3000], tolerance-db: [-1.5, 1.5], balance-db: 1}
      regions:
        - {name: bass, hz: [20, 200], window-db: [-2, 2], match-db: 1.5}
        - {name: mid, hz: [200, 6000], window-db: [-1.5, 1.5], match-db: 1}
        - {name: treble, hz: [6000, 16000], window-db: [[-3, 3], [-6, 6]], match-db: [2.5, 4]}
      polarity: same
      decision: {rule: simple}
      """;

  @Test
  void ofASetToItselfIsNothingWhateverTheVersion() {
    assertThat(words(SET, SET.replace("version: 1", "version: 2"))).isEmpty();
  }

  @Test
  void namesWindowsThatNarrowWidenAndChange() {
    assertThat(words(SET, SET.replace("[-1.5, 1.5], match-db: 1}", "[-1.2, 1.2], match-db: 1}")))
        .containsExactly("The mid window narrowed from ±1.5 dB to ±1.2 dB, 200 Hz–6 kHz.");
    assertThat(words(SET, SET.replace("[-2, 2]", "[-2, 2.5]")))
        .containsExactly("The bass window widened from ±2 dB to −2/+2.5 dB, 20 Hz–200 Hz.");
    assertThat(words(SET, SET.replace("[[-3, 3], [-6, 6]]", "[[-3, 3.5], [-6, 5]]")))
        .containsExactly(
            "The treble window changed from ±3 dB … ±6 dB to −3/+3.5 dB … −6/+5 dB, 6 kHz–16 kHz.");
  }

  @Test
  void namesMatchLimits() {
    assertThat(words(SET, SET.replace("[2.5, 4]", "[2, 4]")))
        .containsExactly(
            "The match limit in treble lowered from 2.5 dB … 4 dB to 2 dB … 4 dB, 6 kHz–16 kHz.");
    assertThat(words(SET, SET.replace(", match-db: 1.5", "")))
        .containsExactly("The match limit of 1.5 dB in bass is gone, 20 Hz–200 Hz.");
    assertThat(words(SET.replace(", match-db: 1.5", ""), SET))
        .containsExactly("A match limit of 1.5 dB in bass is new, 20 Hz–200 Hz.");
  }

  @Test
  void namesLevelBalanceAndRegions() {
    assertThat(
            words(
                SET,
                SET.replace(
                    "tolerance-db: [-1.5, 1.5], balance-db: 1}",
                    "tolerance-db: [-1, 1], balance-db: 1.2}")))
        .containsExactly(
            "The level tolerance narrowed from ±1.5 dB to ±1 dB.",
            "The balance limit raised from 1 dB to 1.2 dB.");
    assertThat(words(SET, SET.replace("name: bass", "name: low")))
        .containsExactly(
            "Region bass (20 Hz–200 Hz) is no longer judged.",
            "Region low (20 Hz–200 Hz) is new: window ±2 dB, match limit 1.5 dB.");
  }

  @Test
  void writesEverythingElseAsTheYamlDoes() {
    assertThat(
            words(
                SET,
                SET.replace("rule: simple", "rule: guarded, guard: 1, conditional-pass: accept")))
        .containsExactly(
            "decision: {rule: guarded, guard: 1, conditional-pass: accept} instead of {rule: simple}.");
  }
}
