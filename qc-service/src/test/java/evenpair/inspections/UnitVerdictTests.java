package evenpair.inspections;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.EarSimulator;
import evenpair.products.Products.Tuning;
import evenpair.tolerance.Verdict;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class UnitVerdictTests {
  private static final Instant NOW = Instant.parse("2026-11-25T07:00:00Z");
  private static final List<Tuning> TUNINGS =
      List.of(new Tuning("plain", true), new Tuning("warm", true), new Tuning("lively", false));

  /**
   * @param order later ones have greater numbers, as UUIDv7 keys have
   */
  private static InspectionRow row(int order, String tuning, Occasion occasion, Verdict verdict) {
    Submission sent =
        new Submission(
            "FE-1",
            "FB-1",
            "fern-1",
            tuning,
            "bench-1",
            "op-17",
            1,
            occasion,
            Optional.empty(),
            Optional.empty(),
            null,
            null);
    InspectionRow row =
        new InspectionRow(
            new UUID(order, 0),
            sent,
            UUID.randomUUID(),
            FixtureProducts.set("fern-1", tuning, EarSimulator.IEC_60318_4, 1, 180),
            NOW,
            "0.1.0");
    if (verdict != null) {
      row.close(verdict, NOW);
    }
    return row;
  }

  private static UnitVerdict verdict(InspectionRow... rows) {
    return UnitVerdict.of(TUNINGS, List.of(rows));
  }

  @Test
  void passesWhenEveryRequiredTuningPassed() {
    UnitVerdict verdict =
        verdict(
            row(1, "plain", Occasion.PRODUCTION, Verdict.PASS),
            row(2, "warm", Occasion.PRODUCTION, Verdict.PASS),
            row(3, "lively", Occasion.PRODUCTION, Verdict.FAIL));
    assertThat(verdict.verdict()).as("lively is not required").isEqualTo("PASS");
  }

  @Test
  void isIncompleteWhileATuningIsMissingOrOpen() {
    assertThat(verdict().verdict()).isEqualTo("INCOMPLETE");
    UnitVerdict open =
        verdict(
            row(1, "plain", Occasion.PRODUCTION, Verdict.PASS),
            row(2, "warm", Occasion.PRODUCTION, null));
    assertThat(open.verdict()).isEqualTo("INCOMPLETE");
    assertThat(open.missing()).containsExactly("warm");
  }

  @Test
  void failsOnOneRequiredTuningEvenIfAnotherIsMissing() {
    UnitVerdict verdict = verdict(row(1, "plain", Occasion.PRODUCTION, Verdict.FAIL));
    assertThat(verdict.verdict()).isEqualTo("FAIL");
    assertThat(verdict.failed()).containsExactly("plain");
  }

  @Test
  void countsTheCurrentOccasionOnlyAndItsNewestVerdict() {
    InspectionRow production = row(1, "plain", Occasion.PRODUCTION, Verdict.FAIL);
    InspectionRow warm = row(2, "warm", Occasion.REWORK, Verdict.PASS);
    InspectionRow first = row(3, "plain", Occasion.REWORK, Verdict.FAIL);
    InspectionRow second = row(4, "plain", Occasion.REWORK, Verdict.PASS);
    assertThat(verdict(production, warm, first).verdict()).isEqualTo("FAIL");
    assertThat(verdict(second, production, warm, first).verdict()).isEqualTo("PASS");
  }

  @Test
  void passesOverWhatWasAbandoned() {
    InspectionRow abandoned = row(9, "plain", Occasion.AUDIT, null);
    abandoned.abandon(AbandonReason.TIMED_OUT, NOW);
    UnitVerdict verdict =
        verdict(
            abandoned,
            row(1, "plain", Occasion.PRODUCTION, Verdict.PASS),
            row(2, "warm", Occasion.PRODUCTION, Verdict.PASS));
    assertThat(verdict.occasion()).isEqualTo(Occasion.PRODUCTION);
    assertThat(verdict.verdict()).isEqualTo("PASS");
  }
}
