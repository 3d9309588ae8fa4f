package evenpair.batches;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenpair.batches.StatisticsJson.About;
import evenpair.batches.StatisticsJson.CapabilityRow;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.batches.StatisticsJson.Components;
import evenpair.batches.StatisticsJson.ScoredUnit;
import evenpair.batches.StatisticsJson.Signal;
import evenpair.batches.StatisticsJson.StationComparison;
import evenpair.batches.StatisticsJson.StationDifference;
import evenpair.batches.StatisticsJson.StationRow;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.tolerance.Drive;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.LimitSet.DecisionRule;
import evenpair.web.Refusal;
import evenpair.web.TestTexts;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Windows ±2 dB, match limit ±1.5 dB, level ±1.5 dB, balance ±1 dB; bass and treble. */
class StatisticsPanelsTests {
  private static final StatisticsWords WORDS =
      new StatisticsWords(TestTexts.real(), Locale.ENGLISH);
  private static final LimitSet SET =
      GoldenLine.limits("plain", 3, new Drive.Voltage(180), new DecisionRule(false, 0, false));

  @Nested
  class CapabilityOfABatch {
    private final List<CapabilityRow> rows =
        new CapabilityFigures(WORDS).rows(quantities(new LotChange(120, 7).curves()));

    @Test
    void hasARowForEveryLimit() {
      assertThat(rows)
          .extracting(CapabilityRow::name)
          .containsExactly(
              "Left, level",
              "Right, level",
              "Balance, left − right level",
              "Left, mean of bass",
              "Right, mean of bass",
              edge("Left", "bass"),
              edge("Right", "bass"),
              "Left − right, mean of bass",
              "Match margin in bass",
              "Left, mean of treble",
              "Right, mean of treble",
              edge("Left", "treble"),
              edge("Right", "treble"),
              "Left − right, mean of treble",
              "Match margin in treble");
    }

    private String edge(String channel, String region) {
      String start = channel + ", " + region + ": room to the ";
      return rows.stream()
          .map(CapabilityRow::name)
          .filter(name -> name.startsWith(start))
          .findFirst()
          .orElseThrow();
    }

    /**
     * Level: sd 0.2 dB within ±1.5 dB, so Pp is 2.5; the estimate from 120 units has a standard
     * error of 2.5/√(2·119) = 0.16; four of them.
     */
    @Test
    void findsTheIndexThatTheLineWasMadeWith() {
      CapabilityRow level = rows.get(0);

      assertThat(level.n()).isEqualTo(120);
      assertThat(level.pp().value()).isCloseTo(2.5, within(0.65));
      assertThat(level.cp().value()).isCloseTo(2.5, within(0.85)); // σ from moving ranges: 0.21
      assertThat(level.pp().interval()[0]).isLessThan(level.pp().value());
      assertThat(level.ppk().atLeast()).isBetween(level.ppk().interval()[0], level.ppk().value());
      assertThat(level.lowerLimitDb()).isEqualTo(-1.5);
    }

    @Test
    void hasOneLimitAtAWorstPoint() {
      CapabilityRow worst =
          rows.stream()
              .filter(row -> row.name().contains("treble: room"))
              .findFirst()
              .orElseThrow();

      assertThat(worst.cp()).isNull();
      assertThat(worst.upperLimitDb()).isNull();
      assertThat(worst.lowerLimitDb()).isZero();
      assertThat(worst.ppk().value()).isPositive();
    }

    @Test
    void holdsWhatItSaysItHolds() {
      CapabilityRow level = rows.get(0);

      assertThat(level.holds().method()).isEqualTo("normal");
      // k(120; .95, .95) lies between 1.96 and k(100) = 2.2339 (ISO 16269-6, from memory)
      double half = (level.holds().upperDb() - level.holds().lowerDb()) / 2;
      assertThat(half / level.sdOverallDb()).isBetween(1.96, 2.24);
    }

    @Test
    void isCountedWhereValuesAreNotNormal() {
      CapabilityRow mixed =
          new CapabilityFigures(WORDS)
              .rows(quantities(new LotChange(120, 7).failing(10).curves())).stream()
                  .filter(row -> row.name().equals("Right, mean of treble"))
                  .findFirst()
                  .orElseThrow();

      assertThat(mixed.normality().rejected()).isTrue();
      assertThat(mixed.quoted()).isEqualTo("counting");
      assertThat(mixed.alternative().outside()).isEqualTo(12);
      assertThat(mixed.alternative().text()).contains("12 of 120 outside");
      // upper bound of 12/120, one-sided 95 %: .1572 (Clopper–Pearson by SciPy); z = 1.006, over 3
      assertThat(mixed.alternative().atLeast()).isCloseTo(0.335, within(0.001));
      assertThat(mixed.holds().method()).isEqualTo("extremes"); // 120 units are more than 93
    }

    @Test
    void comesFromPercentilesOfManyUnits() {
      CapabilityRow mixed =
          new CapabilityFigures(WORDS)
              .rows(quantities(new LotChange(800, 7).from(400, 1.5).curves())).stream()
                  .filter(row -> row.name().equals("Left, mean of treble"))
                  .findFirst()
                  .orElseThrow();

      assertThat(mixed.quoted()).isEqualTo("percentiles");
      assertThat(mixed.alternative().ppk()).isPositive().isNotEqualTo(mixed.ppk().value());
    }

    @Test
    void saysHowManyUnitsAreMissing() {
      List<CapabilityRow> few =
          new CapabilityFigures(WORDS).rows(quantities(new LotChange(9, 7).curves()));

      assertThat(few).allSatisfy(row -> assertThat(row.cpk()).isNull());
      assertThat(few.get(0).missing().need()).isEqualTo(10);
      assertThat(few.get(0).missing().text()).isEqualTo("Too few units: 9 of at least 10.");
    }

    @Test
    void leavesUnitsOutWhoseCurveLacksAPoint() {
      List<CapabilityRow> gap =
          new CapabilityFigures(WORDS).rows(quantities(new LotChange(40, 7).gap(3).curves()));

      assertThat(named(gap, "Left, mean of treble").n()).isEqualTo(39);
      assertThat(named(gap, "Right, mean of treble").n()).isEqualTo(40);
    }

    private CapabilityRow named(List<CapabilityRow> all, String name) {
      return all.stream().filter(row -> row.name().equals(name)).findFirst().orElseThrow();
    }
  }

  /** The treble rises by 0.8 dB, four standard deviations, from unit 40 of 80 on. */
  @Nested
  class ChartsOfALotChange {
    private final BatchCurves curves = new LotChange(80, 11).from(40, 0.8).curves();

    @Test
    void signalAfterItAndNotBeforeOnceTheFirstUnitsSetTheLimits() {
      for (String kind : List.of("individuals", "ewma", "cusum")) {
        Charts chart = chart(kind, "30");

        assertThat(chart.signals()).as(kind).isNotEmpty();
        int first =
            chart.signals().stream()
                .filter(signal -> signal.panel() == 0 && signal.rule().startsWith("beyond"))
                .flatMapToInt(signal -> Arrays.stream(signal.points()))
                .min()
                .orElseThrow();
        // four standard deviations: at the first changed unit or a few later
        assertThat(first).as(kind).isBetween(40, 44);
      }
    }

    @Test
    void sayWhereACusumBegan() {
      Signal signal = chart("cusum", "30").signals().get(0);

      assertThat(signal.text()).contains("upwards").contains("began about SG2-0000");
      assertThat(signal.rule()).isEqualTo("beyond-h");
    }

    @Test
    void nameTheRulesAndTheUnitsAtEachPoint() {
      Charts chart = chart("individuals", "30");

      assertThat(chart.name()).isEqualTo("Left, mean of treble");
      assertThat(chart.unit()).isEqualTo("dB");
      assertThat(chart.points()).hasSize(80);
      assertThat(chart.points().get(40).units().get(0).serial()).isEqualTo("SG2-000040");
      assertThat(chart.signals())
          .extracting(Signal::text)
          .contains("Nine in a row on one side of the mean");
      assertThat(chart.panels()).hasSize(2);
      assertThat(chart.panels().get(1).lines().get(0)[0]).isNaN();
      assertThat(chart.baseline()).isEqualTo(30);
      assertThat(chart.choices()).extracting(StatisticsJson.Choice::name).contains("Left, level");
    }

    @Test
    void groupUnitsForMeansAndStandardDeviations() {
      Charts chart = chart("xbar-s", "50");

      assertThat(chart.subgroup()).isEqualTo(5);
      assertThat(chart.points()).hasSize(16);
      assertThat(chart.points().get(0).units()).hasSize(5);
      assertThat(chart.panels()).hasSize(2);
    }

    private Charts chart(String kind, String baseline) {
      return figures(curves).chart(request(null, "treble", null, kind, baseline));
    }
  }

  @Nested
  class ChartsThatCannotSpeak {
    @Test
    void sayWhatTheyNeed() {
      Charts few =
          figures(new LotChange(8, 1).curves()).chart(request(null, null, null, null, null));

      assertThat(few.missing().text()).isEqualTo("Too few units: 8 of at least 10.");
      assertThat(few.points()).isEmpty();
      Charts shares =
          figures(new LotChange(95, 1).curves()).chart(request(null, null, null, "p", null));
      assertThat(shares.missing().need()).isEqualTo(100);
    }

    @Test
    void refuseWhatIsNotThere() {
      ChartFigures figures = figures(new LotChange(20, 1).curves());

      assertThatThrownBy(() -> figures.chart(request("loudness", null, null, null, null)))
          .isInstanceOf(Refusal.class)
          .hasMessageContaining("region-mean");
      assertThatThrownBy(() -> figures.chart(request(null, "mid", null, null, null)))
          .hasMessageContaining("region");
      assertThatThrownBy(() -> figures.chart(request(null, null, null, "pie", null)))
          .hasMessageContaining("cusum");
      assertThatThrownBy(() -> figures.chart(request(null, null, null, null, "none")))
          .hasMessageContaining("whole number");
    }

    @Test
    void countFailuresWhateverTheQuantity() {
      Charts shares =
          figures(new LotChange(200, 1).failing(10).curves())
              .chart(request(null, null, null, "p", null));

      assertThat(shares.unit()).isEqualTo("1");
      assertThat(shares.points()).hasSize(20);
      assertThat(shares.panels().get(0).centre()).isEqualTo(0.1);
      assertThat(shares.signals()).isEmpty();
    }
  }

  @Nested
  class ComponentsOfALotChange {
    private final Components found =
        components(new LotChange(80, 11).from(40, 0.8).failing(16).curves(), Integer.MAX_VALUE);

    @Test
    void beginWithTheTrebleOfBothSides() {
      assertThat(found.components().get(0).text()).startsWith("Strongest in treble, ");
      assertThat(found.components().get(0).share()).isGreaterThan(0.9);
      int treble = found.frequencyHz().length - 1;
      double[] left = found.components().get(0).leftDb();
      double[] right = found.components().get(0).rightDb();
      // a mixture of two lots 0.8 dB apart, each of sd 0.2: √(0.4² + 0.2²) = 0.45; a tenth allowed
      assertThat(left[treble]).isCloseTo(0.45, within(0.045));
      assertThat(right[treble]).isCloseTo(0.45, within(0.045));
      assertThat(left[0]).isCloseTo(0, within(0.05));
    }

    @Test
    void comeFromPassedUnitsAndTellTheFailedOnesApart() {
      assertThat(found.from()).isEqualTo(75);
      assertThat(found.units()).hasSize(80);
      assertThat(found.units())
          .filteredOn(unit -> unit.verdict().equals("FAIL"))
          .hasSize(5)
          .allMatch(unit -> unit.signals() && !unit.member());
      assertThat(found.tSquared().otherLimit()).isGreaterThan(found.tSquared().memberLimit());
    }

    @Test
    void showTheChangeOnceTheFirstUnitsSetThem() {
      Components first = components(new LotChange(80, 11).from(40, 0.8).curves(), 40);

      assertThat(first.from()).isEqualTo(40);
      assertThat(first.units().subList(0, 40)).allMatch(ScoredUnit::member);
      // four standard deviations of the one component: T² is near 16, its limit near 11
      long signals = first.units().stream().skip(40).filter(ScoredUnit::signals).count();
      assertThat(signals).isGreaterThan(20);
      assertThat(first.units().stream().limit(40).filter(ScoredUnit::signals)).isEmpty();
    }

    @Test
    void leaveUnitsWithGapsOutAndSaySo() {
      Components gap = components(new LotChange(30, 3).gap(5).curves(), Integer.MAX_VALUE);

      assertThat(gap.units()).hasSize(29);
      assertThat(gap.notes()).containsExactly("Units left out because their curves have gaps: 1.");
    }

    @Test
    void sayWhatTheyNeed() {
      Components few = components(new LotChange(19, 3).curves(), Integer.MAX_VALUE);

      assertThat(few.missing().text()).isEqualTo("Too few units: 19 of at least 20.");
      assertThat(few.components()).isEmpty();
    }
  }

  @Nested
  class StationsCompared {
    @Test
    void nameTheOneThatReadsHigher() {
      StationComparison found = stations(new LotChange(80, 5).secondBench(0.4).curves());

      StationRow level = found.rows().get(0);
      assertThat(level.name()).isEqualTo("Left, level");
      assertThat(level.p()).isLessThan(1e-6);
      StationDifference difference = level.differences().get(0);
      assertThat(difference.clear()).isTrue();
      assertThat(difference.text())
          .startsWith("Left, level: bench-2 reads +0.")
          .contains("against bench-1");
      assertThat(difference.interval()[0]).isLessThan(difference.interval()[1]).isNegative();
      assertThat(level.stations())
          .extracting(StatisticsJson.StationMean::n)
          .containsExactly(40, 40);
    }

    @Test
    void areLeftAloneWhereTheyReadAlike() {
      StationComparison found = stations(new LotChange(80, 5).curves());

      assertThat(found.rows())
          .flatExtracting(StationRow::differences)
          .noneMatch(StationDifference::clear);
    }

    @Test
    void needTwo() {
      StationComparison found = stations(new LotChange(3, 5).curves());

      assertThat(found.missing().text())
          .isEqualTo("Too few groups with two units or more: 1 of at least 2.");
      assertThat(found.notes()).containsExactly("Fewer than two units, not compared: bench-2.");
    }
  }

  private static UnitQuantities quantities(BatchCurves curves) {
    return new UnitQuantities(FirstPass.of(curves), SET);
  }

  private static About about(BatchCurves curves) {
    return new About(
        "SW-2650",
        curves.product(),
        curves.tuning(),
        curves.limitSets(),
        curves.units().size(),
        List.of("bench-1", "bench-2"),
        LotChange.START,
        LotChange.START);
  }

  private static ChartFigures figures(BatchCurves curves) {
    FirstPass units = FirstPass.of(curves);
    return new ChartFigures(WORDS, units, new UnitQuantities(units, SET), about(curves));
  }

  private static ChartRequest request(
      String quantity, String region, String channel, String kind, String baseline) {
    return new ChartRequest(quantity, region, channel, kind, baseline, null, null);
  }

  private static Components components(BatchCurves curves, int baseline) {
    return new ComponentFigures(WORDS, FirstPass.of(curves), curves.regions(), about(curves))
        .of(baseline);
  }

  private static StationComparison stations(BatchCurves curves) {
    FirstPass units = FirstPass.of(curves);
    return new StationFigures(WORDS, units, new UnitQuantities(units, SET), about(curves))
        .compared();
  }
}
