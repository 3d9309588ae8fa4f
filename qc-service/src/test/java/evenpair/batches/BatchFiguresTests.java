package evenpair.batches;

import static evenpair.batches.RecordedBatch.reason;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Grid;
import evenpair.batches.BatchJson.RankedReason;
import evenpair.batches.BatchJson.Statistics;
import evenpair.batches.StatisticsJson.UnitLink;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.web.TestTexts;
import evenpair.web.Texts;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class BatchFiguresTests {
  private static final Texts TEXTS = TestTexts.real();
  private static final int AT_100_HZ = Grid.nearest(100);
  private static final int AT_1_KHZ = Grid.nearest(1000);

  @Nested
  class Yield {
    @Test
    void countsEachUnitOnceByItsFirstInspection() {
      Statistics found =
          statistics(
              new RecordedBatch()
                  .failed("A")
                  .passed("B", 0, 0, 0)
                  .passed("C", 0, 0, 0)
                  .at("rework")
                  .passed("A", 0, 0, 0) // it was mended
                  .at("audit")
                  .failed("B")); // and this one found at fault

      assertThat(found.units()).isEqualTo(new BatchJson.Units(3, 2, 1));
      assertThat(found.yield().passed()).isEqualTo(2);
      assertThat(found.yield().share()).isEqualTo(2.0 / 3);
      // rework mended A, and the audit of B came after the line was through with it
      assertThat(found.finalYield().passed()).isEqualTo(3);
      assertThat(found.finalYield().of()).isEqualTo(3);
      assertThat(found.left().n()).isEqualTo(3);
      assertThat(found.notes())
          .anyMatch(note -> note.contains("Later inspections") && note.contains("2"));
    }

    @Test
    void givesBothIntervals() {
      RecordedBatch batch = new RecordedBatch();
      for (int i = 0; i < 20; i++) {
        batch = i < 4 ? batch.passed("U" + i, 0, 0, 0) : batch.failed("U" + i);
      }

      Statistics found = statistics(batch);

      // 4 of 20, as SciPy and R give it to six decimals
      assertThat(found.yield().wilson())
          .containsExactly(new double[] {0.080658, 0.416017}, within(1e-6));
      assertThat(found.yield().clopperPearson())
          .containsExactly(new double[] {0.057334, 0.436614}, within(1e-6));
    }

    @Test
    void countsUnitsThatNeverSealedButLeavesThemOutOfCurves() {
      Statistics found =
          statistics(
              new RecordedBatch().neverSealed("A").passed("B", 0, 0.5, 0).passed("C", 0, 0.7, 0));

      assertThat(found.units().inspected()).isEqualTo(3);
      assertThat(found.left().n()).isEqualTo(2);
      assertThat(found.left().deviation().mean()[AT_1_KHZ]).isCloseTo(0.6, within(0.001));
      assertThat(found.notes()).anyMatch(note -> note.contains("without curves"));
    }
  }

  @Nested
  class Reasons {
    @Test
    void areRankedByUnitsAndWorded() {
      Statistics found =
          statistics(
              new RecordedBatch()
                  .failed("A", reason("window", "right", "treble"), reason("match", null, "treble"))
                  .failed("B", reason("window", "right", "treble"))
                  .failed("C", reason("level", "left", null))
                  .passed("D", 0, 0, 0));

      assertThat(found.reasons())
          .extracting(RankedReason::text)
          .containsExactly(
              "Right earpiece outside its treble window",
              "Left and right differ too much in treble",
              "Left earpiece too loud or too quiet");
      RankedReason first = found.reasons().get(0);
      assertThat(first.kind() + " " + first.channel() + " " + first.region())
          .isEqualTo("window right treble");
      assertThat(first.units()).isEqualTo(2);
      assertThat(first.share()).isEqualTo(0.5);
      assertThat(first.failed()).extracting(UnitLink::serial).containsExactly("A", "B");
    }

    @Test
    void countAUnitOnceEvenIfItFailsTwiceForTheSame() {
      Statistics found =
          statistics(
              new RecordedBatch()
                  .failed("A", reason("thd", "left", null), reason("thd", "left", null)));

      assertThat(found.reasons()).hasSize(1);
      assertThat(found.reasons().get(0).units()).isEqualTo(1);
    }

    @Test
    void ofAKindWithoutWordsOfItsOwnAreStillNamed() {
      Statistics found =
          statistics(new RecordedBatch().failed("A", reason("no-such-kind", null, "mid")));

      assertThat(found.reasons().get(0).text()).isEqualTo("The pair: no such kind in mid");
    }
  }

  @Nested
  class CurveStatistics {
    private final Statistics found =
        statistics(
            new RecordedBatch()
                .passed("A", 0.5, 1, 0)
                .passed("B", -0.5, 2, 0)
                .passed("C", 1, 3, -1));

    @Test
    void takeTheAlignmentOutOfDeviationsOnly() {
      // by hand: levels 101.5, 101.5, 104; deviations 1, 2, 3; rounded to 0.001 dB
      assertThat(found.left().level().mean()[AT_1_KHZ]).isCloseTo(307.0 / 3, within(0.0006));
      assertThat(found.left().deviation().mean()[AT_1_KHZ]).isEqualTo(2);
      assertThat(found.left().deviation().sd()[AT_1_KHZ]).isEqualTo(1);
      assertThat(found.left().deviation().percentiles().get("50")[AT_1_KHZ]).isEqualTo(2);
      assertThat(found.left().deviation().percentiles())
          .containsOnlyKeys("0.5", "2.5", "50", "97.5", "99.5");
    }

    @Test
    void keepTheAlignmentInLeftMinusRight() {
      // by hand: 101.5 − 100, 101.5 − 100, 104 − 99
      assertThat(found.difference().n()).isEqualTo(3);
      assertThat(found.difference().mean()[AT_1_KHZ]).isCloseTo(8.0 / 3, within(0.0006));
      assertThat(found.difference().percentiles().get("50")[AT_1_KHZ]).isEqualTo(1.5);
    }

    @Test
    void giveTheWindowAsDeviationFromGolden() {
      assertThat(found.window().lowerDb()[AT_100_HZ]).isEqualTo(-2);
      assertThat(found.window().upperDb()[AT_100_HZ]).isEqualTo(2);
      assertThat(found.window().upperDb()[AT_1_KHZ]).isNaN();
      assertThat(found.matchLimitDb()[AT_100_HZ]).isEqualTo(1.5);
    }

    @Test
    void areAbsentWhereNoUnitHasALevel() {
      assertThat(found.left().deviation().mean()[Grid.POINTS - 1]).isNaN();
      assertThat(found.left().deviation().percentiles().get("97.5")[Grid.POINTS - 1]).isNaN();
    }

    @Test
    void sayWhatTooFewUnitsCannotTell() {
      assertThat(found.notes())
          .containsExactly(
              "Percentiles 2.5 and 97.5 need 40 units; have 3.",
              "Percentiles 0.5 and 99.5 need 200 units; have 3.");
    }
  }

  @Nested
  class UnitCurves {
    @Test
    void carryEachUnitsDeviationsAndDifference() {
      BatchJson.Curves found =
          BatchFigures.curves(
              curves(new RecordedBatch().passed("A", 0.5, 1, 0.25).passed("B", 0, 0, 0)), 500);

      assertThat(found.shown()).isEqualTo(2);
      assertThat(found.of()).isEqualTo(2);
      assertThat(found.units().get(0).serial()).isEqualTo("A");
      assertThat(found.units().get(0).leftDeviationDb()[AT_1_KHZ]).isEqualTo(1f);
      assertThat(found.units().get(0).rightDeviationDb()[AT_1_KHZ]).isEqualTo(0.25f);
      assertThat(found.units().get(0).differenceDb()[AT_1_KHZ]).isEqualTo(1.25f);
      assertThat(found.units().get(0).leftDeviationDb()[Grid.POINTS - 1]).isNaN();
    }

    @Test
    void areSpreadEvenlyOverProductionWhenThereAreTooMany() {
      RecordedBatch batch = new RecordedBatch();
      for (int i = 0; i < 9; i++) {
        batch = batch.passed("U" + i, 0, 0, 0);
      }

      BatchJson.Curves found = BatchFigures.curves(curves(batch), 3);

      assertThat(found.units())
          .extracting(BatchJson.UnitCurves::serial)
          .containsExactly("U0", "U4", "U8");
      assertThat(found.of()).isEqualTo(9);
    }

    @Test
    void mayBeNone() {
      assertThat(BatchFigures.curves(curves(new RecordedBatch().neverSealed("A")), 10).units())
          .isEmpty();
    }
  }

  private static Statistics statistics(RecordedBatch batch) {
    return new BatchFigures(TEXTS, Locale.ENGLISH).statistics("SW-2647", curves(batch), Map.of());
  }

  private static BatchCurves curves(RecordedBatch batch) {
    return batch.batchCurves("SW-2647", "sedge-2", "plain", null);
  }
}
