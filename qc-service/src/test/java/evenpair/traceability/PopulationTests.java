package evenpair.traceability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.traceability.Population.Member;
import evenpair.traceability.RegionMeasures.Pair;
import evenpair.traceability.RegionMeasures.What;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Golden 100 dB; regions bass (match limit 1.5 dB) and treble (2 dB); level over 300 Hz–3 kHz. */
class PopulationTests {
  private static final Band TREBLE = new Band(6000, 16_000);

  private static JudgedCurves reference() {
    double[] match = new double[Grid.POINTS];
    Arrays.fill(match, Double.NaN);
    for (int i = 0; i < match.length; i++) {
      match[i] = new Band(20, 200).holds(i) ? 1.5 : TREBLE.holds(i) ? 2 : Double.NaN;
    }
    double[] flat = flat(100);
    return new JudgedCurves(
        Grid.frequencies(),
        flat,
        flat,
        flat,
        flat,
        flat,
        flat,
        match,
        0,
        0,
        List.of(new RegionSpan("bass", 20, 200), new RegionSpan("treble", 6000, 16_000)),
        "none",
        100,
        10_000);
  }

  private static double[] flat(double db) {
    double[] values = new double[Grid.POINTS];
    Arrays.fill(values, db);
    return values;
  }

  /** Flat at 100 dB but for the treble, which is raised. */
  private static Curve treble(double db) {
    double[] values = flat(100);
    for (int i = TREBLE.firstIndex(); i <= TREBLE.lastIndex(); i++) {
      values[i] += db;
    }
    return Curve.of(values);
  }

  private static final RegionMeasures MEASURES =
      new RegionMeasures(reference(), new Band(300, 3000));

  private static BatchUnit unit(int n, int row) {
    return new BatchUnit(
        new UUID(1, n),
        "U-" + n,
        "bench-1",
        "production",
        "PASS",
        Instant.parse("2026-11-25T07:00:00Z").plusSeconds(n),
        row,
        List.of());
  }

  /** Units whose left treble lies that much above their right one. */
  private static BatchCurves batch(int first, double... trebleDb) {
    List<BatchUnit> units = new ArrayList<>();
    float[] left = new float[trebleDb.length * Grid.POINTS];
    float[] right = new float[left.length];
    for (int n = 0; n < trebleDb.length; n++) {
      units.add(unit(first + n, n));
      System.arraycopy(treble(trebleDb[n]).toFloats(), 0, left, n * Grid.POINTS, Grid.POINTS);
      System.arraycopy(treble(0).toFloats(), 0, right, n * Grid.POINTS, Grid.POINTS);
    }
    double[] none = new double[trebleDb.length];
    return new BatchCurves(
        "sedge-2",
        "plain",
        List.of(1),
        units,
        left,
        right,
        none,
        none,
        flat(100),
        flat(98),
        flat(102),
        flat(2),
        List.of(),
        "none");
  }

  private static Population of(double ownDb, double[] own, double[]... others) {
    Population population =
        new Population(MEASURES, MEASURES.pair(treble(ownDb), treble(0)), unit(0, 0), "B-0");
    population.add("B-0", batch(1, own));
    for (int b = 0; b < others.length; b++) {
      population.add("B-" + (b + 1), batch(1000 * (b + 1), others[b]));
    }
    return population;
  }

  @Nested
  class NumbersOfAPair {
    @Test
    void areMeansOverTheRegionAndTheWorstDifference() {
      double[] values = MEASURES.of(MEASURES.pair(treble(1.5), treble(-0.5)));
      int at = RegionMeasures.EACH;

      // by hand; the sums round at 1e-13
      assertThat(values[at + What.LEFT.ordinal()]).isCloseTo(1.5, within(1e-9));
      assertThat(values[at + What.RIGHT.ordinal()]).isCloseTo(-0.5, within(1e-9));
      assertThat(values[at + What.DIFFERENCE.ordinal()]).isCloseTo(2.0, within(1e-9));
      assertThat(values[at + What.WORST_DIFFERENCE.ordinal()]).isCloseTo(2.0, within(1e-9));
      assertThat(values[What.WORST_DIFFERENCE.ordinal()]).isZero();
    }

    @Test
    void takeTheLevelOut() {
      Curve loud = treble(1).plus(3);

      assertThat(MEASURES.of(MEASURES.pair(loud, treble(0)))[RegionMeasures.EACH])
          .isCloseTo(1.0, within(1e-9));
    }

    @Test
    void leaveARegionWithoutDataOut() {
      double[] gap = flat(100);
      gap[TREBLE.firstIndex() + 3] = Double.NaN;

      double[] values = MEASURES.of(MEASURES.pair(Curve.of(gap), treble(0)));

      assertThat(values[RegionMeasures.EACH]).isNaN();
      assertThat(values[RegionMeasures.EACH + What.WORST_DIFFERENCE.ordinal()]).isNaN();
      assertThat(values[0]).isZero();
    }

    @Test
    void distancesAreRootMeanSquares() {
      Pair one = MEASURES.pair(treble(2), treble(0));
      Pair other = MEASURES.pair(treble(0), treble(0));
      int judged = new Band(20, 200).points() + TREBLE.points();

      // by hand: 2 dB in the treble points of one channel of two
      double shape = Math.sqrt(4.0 * TREBLE.points() / judged / 2);
      assertThat(MEASURES.shapeDistance(one, other)).isCloseTo(shape, within(1e-9));
      assertThat(MEASURES.differenceDistance(one, other))
          .isCloseTo(Math.sqrt(4.0 * TREBLE.points() / judged), within(1e-9));
    }
  }

  @Nested
  class OneAmongMany {
    private final double[] usual = {0.1, 0.2, 0.3, 0.4, 0.5, -0.1, -0.2, -0.3, -0.4, -0.5};

    @Test
    void standsApartWhenItsDifferenceIsLargerThanTheOthers() {
      AcrossJson.Measure measure = of(3.0, usual).measure(1, What.WORST_DIFFERENCE);

      assertThat(measure.standsApart()).isTrue();
      assertThat(measure.units()).isEqualTo(11);
      // by hand: 10 of 11 below, itself counts half
      assertThat(measure.percentile()).isCloseTo(10.5 / 11, within(1e-12));
      assertThat(measure.othersMedian()).isNull();
    }

    @Test
    void isOneOfAllWhenTheyDifferAsMuch() {
      double[] uneven = {2.8, 2.9, 3.1, 3.2, 2.7, 3.3, 2.6, 3.0, 2.95, 3.05};

      AcrossJson.Measure measure = of(3.0, uneven, usual).measure(1, What.WORST_DIFFERENCE);

      assertThat(measure.standsApart()).isFalse();
      // 32-bit levels at 100 dB are 7.6e-6 dB apart
      assertThat(measure.batchMedian()).isCloseTo(3.0, within(1e-4));
      assertThat(measure.othersMedian()).isCloseTo(0.3, within(1e-4));
    }

    @Test
    void doesNotStandApartForBeingMoreEvenThanTheOthers() {
      double[] uneven = {2.8, 2.9, 3.1, 3.2, 2.7, 3.3, 2.6, 3.0, 2.95, 3.05};

      assertThat(of(0.0, uneven).measure(1, What.WORST_DIFFERENCE).standsApart()).isFalse();
    }

    @Test
    void findsTheNearestAndThoseAsUneven() {
      Population population = of(1.0, new double[] {0.9, -1.0, 0.0, 2.0, 1.5}, usual);

      assertThat(population.nearest(Member::differenceDb, 1))
          .extracting(Member::serial)
          .containsExactly("U-1");
      assertThat(population.worstRegion()).isEqualTo(1);
      assertThat(population.asUneven(1, 10))
          .extracting(Member::serial)
          .containsExactly("U-4", "U-5", "U-2");
    }

    @Test
    void countsEachUnitOnceByItsFirstInspection() {
      Population population = of(1.0, new double[] {0.5, 0.6});
      population.add("B-9", batch(2, 9.0));
      population.add("B-9", batch(0, 9.0));

      assertThat(population.size()).isEqualTo(3);
      assertThat(population.inOrder())
          .extracting(Member::serial)
          .containsExactly("U-0", "U-1", "U-2");
    }
  }

  @Test
  void equalValuesShareTheirPlace() {
    assertThat(Population.percentile(new double[] {1, 2, 2, 3}, 2)).isEqualTo(0.5);
    assertThat(Population.median(new double[] {4, 1, 3, 2})).isEqualTo(2.5);
  }
}
