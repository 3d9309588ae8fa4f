package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import evenpair.acoustics.Band;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Smoothing;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Span;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

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
  class Refuses {
    @ParameterizedTest
    @CsvSource(
        delimiter = '|',
        textBlock =
            """
            version: 3                      | version: 3.5                     | version
            version: 3                      | version: '3'                     | version
            version: 3                      | version: 03                      | version
            version: 3                      | version: 0                       | version
            version: 3                      | version: 1_000                   | version
            product: sedge-2                | product: Sedge 2                 | product
            ear-simulator: IEC 60318-4      | ear-simulator: IEC 60711         | ear-simulator
            golden: plain-golden.csv        | golden: ../plain-golden.csv      | golden
            golden: plain-golden.csv        | golden: ~                        | golden
            {mv-rms: 180}                   | {mv-rms: 180, dbfs: -12}         | drive
            {mv-rms: 180}                   | {}                               | drive
            {mv-rms: 180}                   | {dbfs: 3}                        | drive.dbfs
            {mv-rms: 180}                   | {mv-rms: .nan}                   | drive.mv-rms
            {mv-rms: 180}                   | {mv-rms: .inf}                   | drive.mv-rms
            {mv-rms: 180}                   | {mv-rms: 1e400}                  | drive.mv-rms
            {mv-rms: 180}                   | 180                              | drive
            smoothing: 1/12 octave          | smoothing: 1/24 octave           | smoothing
            band-hz: [300, 3000]            | band-hz: [3000, 300]             | level.band-hz
            band-hz: [300, 3000]            | band-hz: [300]                   | level.band-hz
            band-hz: [300, 3000]            | band-hz: [1001, 1002]            | level.band-hz
            tolerance-db: [-1.5, 1.5]       | tolerance-db: [1.5, 1.5]         | level.tolerance-db
            balance-db: 1.0                 | balance-db: 0                    | level.balance-db
            hz: [20, 200]                   | hz: [10, 200]                    | regions[0].hz[0]
            hz: [6000, 16000]               | hz: [6000, 22000]                | regions[2].hz[1]
            hz: [200, 6000]                 | hz: [150, 6000]                  | regions[1].hz
            name: treble                    | name: bass                       | regions[2].name
            match-db: [2.5, 4.0]            | match-db: [2.5, 0]               | regions[2].match-db[1]
            [[-3.0, 3.0], [-6.0, 6.0]]      | [[-3.0, 3.0], [6.0, -6.0]]       | regions[2].window-db[1]
            [[-3.0, 3.0], [-6.0, 6.0]]      | [[-3.0, 3.0], -6.0]              | regions[2].window-db[1]
            required: false                 | required: maybe                  | regions[2].required
            orders: [2, 5]                  | orders: [1, 5]                   | distortion[0].orders[0]
            orders: [2, 5]                  | orders: [5, 2]                   | distortion[0].orders
            orders: [2, 5], thd             | thd                              | distortion[0]
            hz: [100, 3000], orders         | hz: [30, 3000], orders           | distortion[0].hz
            hz: [100, 3000], orders         | hz: [100, 3960], orders          | distortion[0].hz
            hz: [100, 700], high            | hz: [100, 1524], high            | distortion[1].hz
            polarity: same                  | polarity: reversed               | polarity
            idle-noise-dba: 20              | idle-noise-dba: loud             | idle-noise-dba
            signal-to-noise-db: 30          | signal-to-noise-db: 1            | signal-to-noise-db
            count: 1, tries: 3              | count: 4, tries: 3               | seating.tries
            leak-db: 3                      | leak-db: -3                      | seating.leak-db
            verification-db: 0.5            | verification-db: 0               | verification-db
            rule: guarded                   | rule: generous                   | decision.rule
            rule: guarded                   | rule: simple                     | decision.guard
            guard: 1.0                      | guard: 0                         | decision.guard
            conditional-pass: accept        | conditional-pass: true           | decision.conditional-pass
            """)
    void whatCannotBeRight(String from, String to, String path) {
      assertThat(problems(changed(from, to))).extracting(LimitsProblem::path).contains(path);
    }

    @Test
    void anAlignmentBandThatNoWindowCovers() {
      LimitsProblem problem = problems(changed("hz: [200, 6000]", "hz: [345, 6000]")).get(0);

      assertThat(problem.path()).isEqualTo("regions");
      assertThat(problem.found()).isEqualTo("no region at 300 Hz");
    }

    @Test
    void aSpanThatIsAcceptedJustBelowTheLastHarmonic() throws UnreadableLimits {
      // 0.9 · min(22 kHz, 24 kHz) = 19.8 kHz: order 5 up to 3959 Hz, order 13 up to 1523 Hz lie
      // below it
      String yaml =
          changed("hz: [100, 3000], orders", "hz: [100, 3959], orders")
              .replace("hz: [100, 700]", "hz: [100, 1523]");

      assertThat(LimitSetReader.read("plain.yaml", Examples.bytes(yaml)).distortion()).hasSize(2);
    }

    @Test
    void eachMissingKey() {
      assertThat(problems("product: sedge-2\n"))
          .extracting(LimitsProblem::path)
          .containsExactly(
              "tuning",
              "version",
              "ear-simulator",
              "golden",
              "drive",
              "smoothing",
              "level",
              "regions");
    }

    @Test
    void anEmptyTextAListAndTwoDocuments() {
      assertThat(problems("").get(0).expected()).isEqualTo("a mapping");
      assertThat(problems("- 1\n").get(0).expected()).isEqualTo("a mapping");
      assertThat(problems("a: 1\n---\nb: 2\n").get(0).expected()).isEqualTo("well-formed YAML");
    }

    @Test
    void malformedYamlWithItsPlace() {
      LimitsProblem problem =
          problems("product: sedge-2\ndrive: {mv-rms: 180\nversion: 1\n").get(0);

      assertThat(problem.line()).isEqualTo(3);
      assertThat(problem.expected()).isEqualTo("well-formed YAML");
    }

    @Test
    void bytesThatAreNotUtf8() {
      assertThat(
              problems("product: s\u00e9dge".getBytes(StandardCharsets.ISO_8859_1))
                  .get(0)
                  .expected())
          .isEqualTo("text in UTF-8");
    }
  }

  @Nested
  class Bombs {
    @Test
    void ofNestedAliasesAreRefusedBeforeTheyUnfold() {
      StringBuilder yaml = new StringBuilder("a0: &a0 [x, x, x, x, x, x, x, x, x]\n");
      for (int i = 1; i < 12; i++) {
        yaml.append("a").append(i).append(": &a").append(i).append(" [");
        yaml.append(("*a" + (i - 1) + ", ").repeat(8)).append("*a").append(i - 1).append("]\n");
      }

      assertThat(problems(yaml.toString()).get(0).expected()).contains("repetition");
    }

    @Test
    void ofDepthAreRefused() {
      assertThat(problems("product: " + "[".repeat(5000) + "]".repeat(5000))).isNotEmpty();
    }

    @Test
    void ofSizeAreRefusedUnparsed() {
      assertThat(problems("product: " + "x".repeat(300_000)).get(0).expected())
          .isEqualTo("at most 262144 bytes");
    }

    @Test
    void thatContainThemselvesAreRefused() {
      assertThat(problems("product: &a [*a]\n")).isNotEmpty();
    }

    @Test
    void thatAskForJavaObjectsMakeNone() {
      LimitsProblem problem =
          problems(
                  changed(
                      "smoothing: 1/12 octave", "smoothing: !!javax.script.ScriptEngineManager []"))
              .get(0);

      assertThat(problem.line()).isEqualTo(8);
      assertThat(problem.found()).contains("tag is not allowed");
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
