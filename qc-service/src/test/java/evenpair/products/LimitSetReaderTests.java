package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import evenpair.acoustics.Band;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.LimitSet.PolarityRule;
import evenpair.tolerance.Span;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class LimitSetReaderTests {

  static List<LimitsProblem> problems(String yaml) {
    return problems(Examples.bytes(yaml));
  }

  static List<LimitsProblem> problems(byte[] yaml) {
    UnreadableLimits refusal =
        catchThrowableOfType(
            UnreadableLimits.class, () -> LimitSetReader.read("limits/sedge-2/plain.yaml", yaml));
    assertThat(refusal).as("the text should have been refused").isNotNull();
    return refusal.problems();
  }

  /** The example with one thing in it changed; the change must be there. */
  static String changed(String from, String to) {
    assertThat(Examples.LIMIT_SET).contains(from);
    return Examples.LIMIT_SET.replace(from, to);
  }

  @Nested
  class AGoodSet {
    @Test
    void isReadWithEveryKey() throws UnreadableLimits {
      LimitSet set = LimitSetReader.read("plain.yaml", Examples.bytes(Examples.LIMIT_SET));

      assertThat(set.product()).isEqualTo("sedge-2");
      assertThat(set.version()).isEqualTo(3);
      assertThat(set.earSimulator()).isEqualTo(EarSimulator.IEC_60318_4);
      assertThat(set.drive()).isEqualTo(new Drive.Voltage(180));
      assertThat(set.smoothing()).isEqualTo(Smoothing.TWELFTH_OCTAVE);
      assertThat(set.level()).isEqualTo(new LimitSet.LevelLimit(new Band(300, 3000), -1.5, 1.5, 1));
      assertThat(set.regions()).hasSize(3);
      assertThat(set.regions().get(0).match()).contains(Span.constant(1.5));
      assertThat(set.regions().get(2).lower()).isEqualTo(new Span(-3, -6));
      assertThat(set.regions().get(2).upper()).isEqualTo(new Span(3, 6));
      assertThat(set.regions().get(2).match()).contains(new Span(2.5, 4));
      assertThat(set.regions().get(2).required()).isFalse();
      assertThat(set.distortion().get(0).orders()).contains(new LimitSet.Orders(2, 5));
      assertThat(set.distortion().get(1).highOrderDb()).hasValue(-50);
      assertThat(set.polaritySame()).isTrue();
      assertThat(set.idleNoiseDba()).hasValue(20);
      assertThat(set.seating())
          .isEqualTo(new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)));
      assertThat(set.decision()).isEqualTo(new LimitSet.DecisionRule(true, 1, true));
    }

    @Test
    void mayLeaveOutWhatHasADefault() throws UnreadableLimits {
      String yaml =
          Examples.judgeable("plain", 1)
              .replaceAll(
                  "(?m)^(polarity|signal-to-noise-db|seating|verification-db|decision).*\\n", "");

      LimitSet set = LimitSetReader.read("plain.yaml", Examples.bytes(yaml));

      assertThat(set.polaritySame()).isFalse();
      assertThat(set.signalToNoiseDb()).isEqualTo(30);
      assertThat(set.idleNoiseDba()).isEqualTo(OptionalDouble.empty());
      assertThat(set.seating().tries()).isEqualTo(3);
      assertThat(set.verificationDb()).isEqualTo(0.5);
      assertThat(set.decision().guarded()).isFalse();
    }

    @Test
    void mayAskForPolarityWithoutRequiringIt() throws UnreadableLimits {
      String yaml =
          changed(
              "polarity: same",
              "polarity: {same: true, required: false, bands-hz: [[30, 120], [2000, 5000]]}");

      LimitSet set = LimitSetReader.read("plain.yaml", Examples.bytes(yaml));

      assertThat(set.polarity())
          .isEqualTo(
              new PolarityRule(true, false, List.of(new Band(30, 120), new Band(2000, 5000))));
      assertThat(set.polaritySame()).isTrue();
    }

    @Test
    void meansTheSameByAPolarityMappingThatSaysNoMore() throws UnreadableLimits {
      String yaml = changed("polarity: same", "polarity: {same: true}");

      LimitSet set = LimitSetReader.read("plain.yaml", Examples.bytes(yaml));

      assertThat(set.polarity()).isEqualTo(PolarityRule.SAME);
      assertThat(Canonical.text(set)).contains("polarity: same\n");
    }

    @Test
    void mayBeWrittenAsJson() throws UnreadableLimits {
      LimitSet fromYaml = LimitSetReader.read("a", Examples.bytes(Examples.LIMIT_SET));
      String json =
          tools.jackson.databind.json.JsonMapper.builder()
              .build()
              .writeValueAsString(LimitSetTree.of(fromYaml));

      assertThat(LimitSetReader.read("b", Examples.bytes(json))).isEqualTo(fromYaml);
    }
  }

  @Nested
  class EveryProblem {
    @Test
    void isCollectedWithItsPlaceAndWhatWouldBeRight() {
      List<LimitsProblem> problems =
          problems(
              changed("version: 3", "version: three")
                  .replace("mv-rms: 180", "mv-rms: 0")
                  .replace("[-1.5, 1.5], match-db: 1.0", "[1.5, -1.5], match-db: -1.0"));

      assertThat(problems)
          .extracting(LimitsProblem::path)
          .containsExactly(
              "version", "drive.mv-rms", "regions[1].window-db", "regions[1].match-db");
      assertThat(problems.get(0).toString())
          .isEqualTo(
              "limits/sedge-2/plain.yaml line 4, column 10, version: found \"three\", expected a"
                  + " whole number from 1 to 1000000");
      assertThat(problems.get(3).line()).isEqualTo(12);
      assertThat(problems.get(3).column()).isEqualTo(73);
    }

    @Test
    void namesTheNearestKeyForAnUnknownOne() {
      LimitsProblem problem = problems(changed("match-db: 1.0", "macht-db: 1.0")).get(0);

      assertThat(problem.path()).isEqualTo("regions[1].macht-db");
      assertThat(problem.line()).isEqualTo(12);
      assertThat(problem.found()).isEqualTo("an unknown key");
      assertThat(problem.expected()).contains("nearest: match-db");
    }

    @Test
    void namesBothPlacesOfARepeatedKey() {
      LimitsProblem problem =
          problems(changed("polarity: same", "polarity: same\nversion: 4")).get(0);

      assertThat(problem.found()).isEqualTo("the key a second time");
      assertThat(problem.expected()).contains("first in line 4");
      assertThat(problem.line()).isEqualTo(18);
    }

    @Test
    void isNotMoreThanAHundred() {
      StringBuilder yaml = new StringBuilder(Examples.LIMIT_SET);
      for (int i = 0; i < 500; i++) {
        yaml.append("unknown-").append(i).append(": 1\n");
      }

      assertThat(problems(yaml.toString())).hasSize(100);
    }
  }

  @Nested
  class WithSurroundings {
    private List<LimitsProblem> fitting(Surroundings surroundings) {
      UnreadableLimits refusal =
          catchThrowableOfType(
              UnreadableLimits.class,
              () -> LimitSetReader.read("a", Examples.bytes(Examples.LIMIT_SET), surroundings));
      return refusal == null ? List.of() : refusal.problems();
    }

    @Test
    void mustNameTheirProductTuningSimulatorAndGolden() {
      assertThat(
              fitting(
                  new Surroundings(
                      "sedge-2",
                      Set.of("plain"),
                      EarSimulator.IEC_60318_4,
                      Set.of("plain-golden.csv"))))
          .isEmpty();
      assertThat(
              fitting(
                  new Surroundings("reed-1", Set.of("warm"), EarSimulator.IEC_60318_5, Set.of())))
          .extracting(LimitsProblem::path)
          .containsExactly("product", "tuning", "ear-simulator", "golden");
    }
  }
}
