package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.mockito.ArgumentMatchers.any;
import static org.mockito.Mockito.mock;
import static org.mockito.Mockito.when;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.batches.BatchMeasurement.Pooled;
import evenpair.batches.BatchMeasurement.StationShare;
import evenpair.batches.RiskJson.Check;
import evenpair.batches.RiskJson.Risks;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.stations.Stations;
import evenpair.stations.UncertaintyBudget;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet.DecisionRule;
import evenpair.tolerance.Uncertainty;
import evenpair.web.TestTexts;
import java.time.Instant;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Windows ±2 dB, match limit ±1.5 dB, level ±1.5 dB, balance ±1 dB; units alike at every point. */
class RiskFiguresTests {
  private static final DecisionRule SIMPLE = new DecisionRule(false, 0, false);

  /**
   * Deviations are stored as 32-bit floats near 100 dB: 8e-6 dB each, where the risks rise by less
   * than 0.2 a dB.
   */
  private static final double AS_CALCULATED = 5.1e-7 + 0.2 * 8e-6;

  @Nested
  class OfAWindow {
    @Test
    void areThoseOfTheSameCaseInUnitTolerances() {
      // Twice the case T = ±1, u0 = 0.5, u_m = 0.125 (calculated independently): 0.008006, 0.014851
      Risks found = risks(batch(1, 0.25), SIMPLE, told(0.25));

      Check window = check(found, "window", "bass", "left");
      assertThat(window.consumers().risk()).isCloseTo(0.008006, within(AS_CALCULATED));
      assertThat(window.producers().risk()).isCloseTo(0.014851, within(AS_CALCULATED));
      assertThat(window.consumers().atHz()).isBetween(20.0, 200.0);
      assertThat(window.consumers().guardDb()).isZero();
    }

    @Test
    void areTradedByAGuardBandThatConditionalPassesDoNotCross() {
      // Twice the case w = 0.25 with u_m = 0.125, which is a guard of one U
      Risks found = risks(batch(1, 0.25), new DecisionRule(true, 1, false), told(0.25));

      Check window = check(found, "window", "bass", "left");
      assertThat(window.consumers().risk()).isCloseTo(0.000195, within(AS_CALCULATED));
      assertThat(window.producers().risk()).isCloseTo(0.100304, within(AS_CALCULATED));
      assertThat(window.consumers().guardDb()).isEqualTo(0.5);
      assertThat(found.decision().rule()).isEqualTo("guarded");
    }

    @Test
    void areThoseOfTheLimitItselfIfConditionalPassesAreAccepted() {
      Risks found = risks(batch(1, 0.25), new DecisionRule(true, 1, true), told(0.25));

      assertThat(check(found, "window", "bass", "left").consumers().risk())
          .isCloseTo(0.008006, within(AS_CALCULATED));
    }
  }

  @Test
  void areGivenForEveryCheckAndTheLargestIsNamed() {
    Risks found = risks(batch(1, 0.25), SIMPLE, told(0.25));

    assertThat(found.checks())
        .extracting(c -> c.check() + " " + c.region() + " " + c.channel())
        .containsExactly(
            "level null left",
            "level null right",
            "balance null null",
            "window bass left",
            "window bass right",
            "match bass null",
            "window treble left",
            "window treble right",
            "match treble null");
    // match has the narrower limit over the same spread
    assertThat(found.consumers().check()).isEqualTo("match");
    assertThat(found.consumers().risk())
        .isEqualTo(check(found, "match", "bass", null).consumers().risk());
    assertThat(check(found, "level", null, "left").consumers().atHz()).isNull();
  }

  @Nested
  class Notes {
    @Test
    void sayWhichStationsHaveNoBudget() {
      Risks found =
          risks(
              batch(1, 0.25),
              SIMPLE,
              new StationShare("bench-1", 20, Optional.of(u(0.25))),
              new StationShare("bench-2", 20, Optional.empty()));

      assertThat(found.notes())
          .anyMatch(
              note -> note.startsWith("Stations without a valid uncertainty budget: bench-2."));
      assertThat(found.stations()).extracting("budget").containsExactly(true, false);
      assertThat(found.checks()).isNotEmpty();
    }

    @Test
    void sayThatNothingCanBeTold() {
      Risks found =
          risks(batch(1, 0.25), SIMPLE, new StationShare("bench-1", 40, Optional.empty()));

      assertThat(found.checks()).isEmpty();
      assertThat(found.consumers()).isNull();
      assertThat(found.notes())
          .hasSize(2)
          .anyMatch(note -> note.startsWith("No station of this batch"));
    }

    @Test
    void sayWhereMeasurementAloneExplainsTheSpread() {
      // right earpieces are all exactly alike
      Risks found = risks(batch(1, 0.25), SIMPLE, told(0.25));

      assertThat(found.notes())
          .anyMatch(
              note ->
                  note.startsWith("Where the batch spreads less")
                      && note.contains("Right bass window")
                      && !note.contains("Left bass window"));
      assertThat(check(found, "window", "bass", "right").consumers().risk()).isZero();
    }

    @Test
    void sayWhatIsUnknown() {
      Curve partly = Curve.of(absentBelow100Hz());
      Risks found =
          risks(
              batch(1, 0.25),
              SIMPLE,
              new StationShare(
                  "bench-1", 40, Optional.of(new Uncertainty(partly, partly, 0.1, 0.1))));

      assertThat(found.notes())
          .anyMatch(
              note ->
                  note.startsWith("Not told")
                      && note.contains("bass match")
                      && !note.contains("treble"));
      assertThat(check(found, "window", "bass", "left").consumers().atHz())
          .isGreaterThanOrEqualTo(100);
    }

    @Test
    void sayThatASingleUnitHasNoSpread() {
      BatchCurves one =
          new RecordedBatch().passed("A", 0, 0, 0).batchCurves("SW-2647", "sedge-2", "plain", null);

      Risks found = risks(one, SIMPLE, told(0.25));

      assertThat(found.notes()).contains("A spread needs 2 units with curves; have 1.");
      assertThat(found.checks()).allMatch(c -> c.consumers() == null && c.producers() == null);
    }
  }

  @Nested
  class Measurement {
    @Test
    void poolsVariancesByUnits() {
      Pooled pooled =
          Pooled.of(
                  List.of(
                      new StationShare("bench-1", 30, Optional.of(u(0.1))),
                      new StationShare("bench-2", 10, Optional.of(u(0.3))),
                      new StationShare("bench-3", 99, Optional.empty())))
              .orElseThrow();

      // by hand: (30·0.01 + 10·0.09)/40 = 0.03; rounding near 1e-17
      assertThat(pooled.levelDb().at(0)).isCloseTo(Math.sqrt(0.03), within(1e-15));
      assertThat(pooled.balanceDb()).isCloseTo(Math.sqrt(0.03), within(1e-15));
    }

    @Test
    void takesEachStationsBudgetWhenItMeasuredTheLastUnit() {
      Instant first = Instant.parse("2026-11-25T07:00:00Z");
      Stations stations = mock(Stations.class);
      UncertaintyBudget budget = mock(UncertaintyBudget.class);
      when(budget.forSeatings(2)).thenReturn(u(0.2));
      when(stations.budgetAt(any(), any(), any(), any())).thenReturn(Optional.empty());
      when(stations.budgetAt("bench-1", "sedge-2", "plain", first.plusSeconds(9)))
          .thenReturn(Optional.of(budget));

      List<StationShare> shares =
          new BatchMeasurement(stations)
              .shares(
                  List.of(
                      unit("bench-1", first),
                      unit("bench-2", first),
                      unit("bench-1", first.plusSeconds(9))),
                  "sedge-2",
                  "plain",
                  2);

      assertThat(shares)
          .containsExactly(
              new StationShare("bench-1", 2, Optional.of(u(0.2))),
              new StationShare("bench-2", 1, Optional.empty()));
    }

    private static BatchUnit unit(String station, Instant at) {
      return new BatchUnit(new UUID(1, 1), "A", station, "production", "PASS", at, 0, List.of());
    }
  }

  /**
   * Forty units whose left earpieces lie evenly at + and − d, so that what is made has standard
   * deviation u0 once the measurement's um is taken off: n·d²/(n − 1) = u0² + um².
   */
  private static BatchCurves batch(double u0, double um) {
    int n = 40;
    double d = Math.sqrt((u0 * u0 + um * um) * (n - 1) / n);
    RecordedBatch batch = new RecordedBatch();
    for (int i = 0; i < n; i++) {
      batch = batch.passed("U" + i, 0, i % 2 == 0 ? d : -d, 0);
    }
    return batch.batchCurves("SW-2647", "sedge-2", "plain", null);
  }

  private static Risks risks(BatchCurves curves, DecisionRule decision, StationShare... shares) {
    return new RiskFigures(TestTexts.real(), Locale.ENGLISH)
        .risks(
            "SW-2647",
            curves,
            GoldenLine.limits("plain", 3, new Drive.Voltage(180), decision),
            List.of(shares));
  }

  private static StationShare told(double um) {
    return new StationShare("bench-1", 40, Optional.of(u(um)));
  }

  private static Uncertainty u(double um) {
    Curve everywhere = Curve.from(hz -> um);
    return new Uncertainty(everywhere, everywhere, um, um);
  }

  private static double[] absentBelow100Hz() {
    double[] u = Curve.from(hz -> 0.25).toArray();
    for (int i = 0; Grid.label(i) < 100; i++) {
      u[i] = Double.NaN;
    }
    return u;
  }

  private static Check check(Risks risks, String check, String region, String channel) {
    return risks.checks().stream()
        .filter(c -> c.check().equals(check))
        .filter(c -> Objects.equals(c.region(), region))
        .filter(c -> Objects.equals(c.channel(), channel))
        .findFirst()
        .orElseThrow();
  }
}
