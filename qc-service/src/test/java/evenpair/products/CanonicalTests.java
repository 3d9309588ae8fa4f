package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.tolerance.LimitSet;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CanonicalTests {

  private static LimitSet set(String yaml) throws UnreadableLimits {
    return LimitSetReader.read("a", Examples.bytes(yaml));
  }

  @Test
  void isStableByteForByte() throws UnreadableLimits {
    String text = Canonical.text(set(Examples.LIMIT_SET));

    assertThat(set(text)).isEqualTo(set(Examples.LIMIT_SET));
    assertThat(Canonical.text(set(text))).isEqualTo(text);
  }

  @Test
  void readsLikeAFileSomeoneWrote() throws UnreadableLimits {
    assertThat(Canonical.text(set(Examples.judgeable("plain", 3))))
        .isEqualTo(
            """
            product: sedge-2
            tuning: plain
            version: 3
            ear-simulator: IEC 60318-4
            golden: plain-golden.csv
            drive: {mv-rms: 180}
            smoothing: 1/12 octave
            level: {band-hz: [300, 3000], tolerance-db: [-1.5, 1.5], balance-db: 1}
            regions:
              - {name: bass, hz: [20, 200], window-db: [-2, 2], match-db: 1.5}
              - {name: mid, hz: [200, 6000], window-db: [-1.5, 1.5], match-db: 1}
              - {name: treble, hz: [6000, 16000], window-db: [[-3, 3], [-6, 6]], match-db: [2.5, 4], required: false}
            polarity: same
            signal-to-noise-db: 30
            seating: {count: 1, tries: 3, leak-db: 3, depth-percent: 8, depth-search-hz: [5000, 11000]}
            verification-db: 0.5
            decision: {rule: simple}
            """);
  }

  @Test
  void writesAPolarityThatSaysMoreAsAMapping() throws UnreadableLimits {
    String rule = "polarity: {same: true, required: false, bands-hz: [[30, 120]]}\n";
    LimitSet set = set(Examples.LIMIT_SET.replace("polarity: same\n", rule));

    assertThat(Canonical.text(set)).contains("\n" + rule);
    assertThat(set(Canonical.text(set))).isEqualTo(set);
  }

  @Test
  void givesEqualDigestsForOtherCommentsOrderAndSpelling() throws UnreadableLimits {
    String respelt =
        Examples.LIMIT_SET
            .replace("# limits of the plain plug\n", "")
            .replace("mv-rms: 180", "mv-rms: 180.0")
            .replace(
                "polarity: same\nidle-noise-dba: 20\n", "idle-noise-dba: 20\npolarity: same\n");

    assertThat(respelt).isNotEqualTo(Examples.LIMIT_SET);
    assertThat(Canonical.digest(set(respelt), "00"))
        .isEqualTo(Canonical.digest(set(Examples.LIMIT_SET), "00"));
  }

  @Test
  void givesAnotherDigestForAnotherLimitOrGolden() throws UnreadableLimits {
    String digest = Canonical.digest(set(Examples.LIMIT_SET), "00");

    assertThat(
            Canonical.digest(
                set(Examples.LIMIT_SET.replace("match-db: 1.5", "match-db: 1.6")), "00"))
        .isNotEqualTo(digest);
    assertThat(Canonical.digest(set(Examples.LIMIT_SET), "01")).isNotEqualTo(digest);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "no",
        "y",
        "Null",
        "on",
        "true",
        "2",
        "1e3",
        "Mid & more",
        "it's",
        "a, b",
        "低音",
        "x-",
        "mid."
      })
  void quotesNamesThatYamlWouldTakeForSomethingElse(String name) throws UnreadableLimits {
    String quoted = "'" + name.replace("'", "''") + "'";
    LimitSet set = set(Examples.LIMIT_SET.replace("name: mid", "name: " + quoted));

    assertThat(set(Canonical.text(set))).isEqualTo(set);
    assertThat(set.regions().get(1).name()).isEqualTo(name);
  }
}
