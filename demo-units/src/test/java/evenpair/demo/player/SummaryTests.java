package evenpair.demo.player;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.demo.earpiece.DemoUnit;
import evenpair.demo.earpiece.Design;
import evenpair.demo.earpiece.Fault;
import evenpair.tolerance.Channel;
import java.io.ByteArrayOutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SummaryTests {
  private static UnitOutcome outcome(
      Fault fault, String unitVerdict, List<String> attempts, String sentence) {
    DemoUnit unit = DemoUnit.build("SG2-004201", "SW-2647", Design.SEDGE_2, fault, Channel.LEFT, 1);
    String verdict = attempts.get(attempts.size() - 1);
    TuningOutcome plain =
        new TuningOutcome(
            "plain", "id-1", verdict, attempts, attempts.size(), Optional.ofNullable(sentence));
    return new UnitOutcome(unit, "bench-1", unitVerdict, List.of(plain));
  }

  @Nested
  class TruthAgainstVerdict {
    @ParameterizedTest
    @CsvSource({
      "NONE,            PASS, PASS,         true",
      "NONE,            FAIL, FAIL,         false",
      "NONE,            PASS, INVALID PASS, false",
      "DEAD_TWEETER,    FAIL, FAIL,         true",
      "DEAD_TWEETER,    PASS, PASS,         false",
      "CLIPPED_CAPTURE, PASS, INVALID PASS, true",
      "CLIPPED_CAPTURE, PASS, PASS,         false",
      "CLIPPED_CAPTURE, INCOMPLETE, INVALID INVALID, false",
      "LEAKY_SEAT,      PASS, RESEAT PASS,  true",
      "LEAKY_SEAT,      PASS, PASS,         false",
      "LEAKY_SEAT,      FAIL, RESEAT RESEAT FAIL, false",
      "NEVER_SEALS,     FAIL, RESEAT RESEAT FAIL, true",
      "WEAK_BASS,       FAIL, FAIL,         true"
    })
    void agreesOnlyWhereTheUnitCameToWhatItShould(
        Fault fault, String unit, String attempts, boolean agrees) {
      assertThat(outcome(fault, unit, List.of(attempts.split(" ")), null).asItShould())
          .isEqualTo(agrees);
    }

    @Test
    void countsFaultsFoundAndGoodUnitsRefused() {
      Summary summary =
          Summary.of(
              List.of(
                  outcome(Fault.NONE, "PASS", List.of("PASS"), null),
                  outcome(Fault.NONE, "FAIL", List.of("FAIL"), "Left earpiece is 0.1 dB too loud."),
                  outcome(
                      Fault.SWAPPED_POLARITY,
                      "FAIL",
                      List.of("FAIL"),
                      "Left earpiece has reversed polarity."),
                  outcome(Fault.DEAD_TWEETER, "PASS", List.of("PASS"), null)));

      assertThat(summary.goodUnits()).isEqualTo(2);
      assertThat(summary.goodRefused()).isEqualTo(1);
      assertThat(summary.faults()).isEqualTo(2);
      assertThat(summary.faultsFound()).isEqualTo(1);
      assertThat(summary.surprises())
          .hasSize(2)
          .anySatisfy(
              line -> assertThat(line).contains("good unit", "Left earpiece is 0.1 dB too loud."))
          .anySatisfy(line -> assertThat(line).contains("dead upper tweeter", "came to PASS"));
      assertThat(summary.asItShould()).isFalse();
    }
  }

  @Nested
  class TheTable {
    private String table(UnitOutcome... outcomes) {
      ByteArrayOutputStream bytes = new ByteArrayOutputStream();
      Tables.verdicts(List.of(outcomes), new PrintStream(bytes, true, StandardCharsets.UTF_8));
      return bytes.toString(StandardCharsets.UTF_8);
    }

    @Test
    void hasARowWithTheFirstReasonForAFailedUnit() {
      String table =
          table(
              outcome(
                  Fault.SWAPPED_POLARITY,
                  "FAIL",
                  List.of("FAIL"),
                  "Left earpiece has reversed polarity."));

      assertThat(table)
          .containsPattern("SG2-004201 +FAIL +FAIL +Left earpiece has reversed polarity\\.");
    }

    @Test
    void marksAPairThatWasMeasuredAgain() {
      String table =
          table(
              outcome(
                  Fault.CLIPPED_CAPTURE,
                  "PASS",
                  List.of("INVALID", "PASS"),
                  "The recording is clipped."));

      assertThat(table).containsPattern("SG2-004201 +PASS +PASS \\* +The recording is clipped\\.");
    }
  }
}
