package evenpair.products;

import static evenpair.products.LimitSetReaderTests.changed;
import static evenpair.products.LimitSetReaderTests.problems;
import static org.assertj.core.api.Assertions.assertThat;

import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LimitSetRefusalTests {
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
            orders: [2, 5]                  | orders: [2, 6]                   | distortion[0].orders[1]
            orders: [2, 5]                  | orders: [5, 2]                   | distortion[0].orders
            thd-percent: 1.0                | thd-percent: 0                   | distortion[0].thd-percent
            thd-percent: 1.0                | thd-percent: 101                 | distortion[0].thd-percent
            high-order-db: -50              | high-order-db: 3                 | distortion[1].high-order-db
            high-order-db: -50              | orders: [2, 5], high-order-db: -50 | distortion[1]
            hz: [100, 700], high            | hz: [40, 700], high              | distortion[1].hz
            orders: [2, 5], thd             | thd                              | distortion[0]
            hz: [100, 3000], orders         | hz: [30, 3000], orders           | distortion[0].hz
            hz: [100, 3000], orders         | hz: [100, 3960], orders          | distortion[0].hz
            hz: [100, 700], high            | hz: [100, 1524], high            | distortion[1].hz
            polarity: same                  | polarity: reversed               | polarity
            polarity: same                  | polarity: {}                     | polarity.same
            polarity: same                  | polarity: {same: false}          | polarity.same
            polarity: same                  | polarity: {same: true, band: 1}  | polarity.band
            polarity: same                  | polarity: {same: true, required: perhaps}    | polarity.required
            polarity: same                  | polarity: {same: true, bands-hz: []}         | polarity.bands-hz
            polarity: same                  | polarity: {same: true, bands-hz: [30, 120]}  | polarity.bands-hz[0]
            polarity: same                  | polarity: {same: true, bands-hz: [[100, 104]]} | polarity.bands-hz[0]
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
    void aSpanBeyondTheLastHarmonicAndNamesTheHighestThatFits() {
      List<LimitsProblem> problems =
          problems(
              changed("hz: [100, 3000], orders", "hz: [100, 3960], orders")
                  .replace("hz: [100, 700]", "hz: [100, 1600]"));

      assertThat(problems)
          .extracting(LimitsProblem::expected)
          .containsExactly(
              "an end of 3959 Hz at most, so that order 5 lies below 19800 Hz",
              "an end of 1523 Hz at most, so that orders 10 to 13 lie below 19800 Hz");
      assertThat(problems.get(0).line()).isEqualTo(15);
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
}
