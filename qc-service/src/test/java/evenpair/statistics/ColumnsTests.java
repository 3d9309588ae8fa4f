package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ColumnsTests {
  @Test
  void describesEachColumnByItself() {
    ColumnStatistics found = Columns.of(new float[] {1, 10, 2, 20, 6, 90}, 2).describe(0, 50, 100);

    assertThat(found.count()).containsExactly(3, 3);
    assertThat(found.mean()).containsExactly(3, 40);
    assertThat(found.sd()[0]).isCloseTo(Math.sqrt(7), within(1e-15)); // by hand: (4 + 1 + 9)/2
    assertThat(found.percentiles()[0]).containsExactly(1, 10);
    assertThat(found.percentiles()[1]).containsExactly(2, 20);
    assertThat(found.percentiles()[2]).containsExactly(6, 90);
  }

  @Test
  void leavesAbsentNumbersOutOfTheirColumnOnly() {
    ColumnStatistics found =
        Columns.of(new float[] {1, Float.NaN, Float.NaN, 3, Float.NaN, Float.NaN}, 3).describe(50);

    assertThat(found.count()).containsExactly(2, 0, 0);
    assertThat(found.mean()[0]).isEqualTo(2);
    assertThat(found.mean()[1]).isNaN();
    assertThat(found.sd()[2]).isNaN();
    assertThat(found.percentiles()[0][0]).isEqualTo(2);
  }

  @Test
  void agreesWithTheDescriptionOfEachColumnTakenOut() {
    int columns = 241;
    int rows = 57;
    Random random = new Random(20261125);
    float[] flat =
        StrdFile.floats(random.doubles((long) rows * columns).map(x -> 100 + 5 * x).toArray());

    ColumnStatistics found = Columns.of(flat, columns).describe(2.5, 97.5);

    for (int c = 0; c < columns; c++) {
      int column = c;
      Description alone =
          Description.of(
              IntStream.range(0, rows).mapToDouble(r -> flat[r * columns + column]).toArray(),
              2.5,
              97.5);
      assertThat(found.mean()[c]).isEqualTo(alone.mean());
      assertThat(found.sd()[c]).isEqualTo(alone.sd());
      assertThat(found.percentiles()[1][c]).isEqualTo(alone.percentiles()[1]);
    }
  }

  /**
   * Long columns are not sorted, but their order statistics are the same floats. Mean and standard
   * deviation are summed another way: 3000 numbers near 100 of a spread near 1, in double, agree to
   * about 3000 roundings of 1e-16 of each term; 1e-11 is allowed.
   */
  @Test
  void findsTheSameInLongColumns() {
    int columns = 19;
    int rows = 3000;
    Random random = new Random(8);
    float[] flat =
        StrdFile.floats(
            random.doubles((long) rows * columns).map(x -> 100 + Math.log(x)).toArray());
    for (int row = 0; row < rows; row++) {
      flat[row * columns] = 4; // all alike
      flat[row * columns + 1] = Float.NaN;
      flat[row * columns + 2] = row == 7 ? 5 : Float.NaN;
      flat[row * columns + 3] = row % 3; // many ties
      flat[row * columns + 4] = row % 5 == 0 ? Float.NaN : flat[row * columns + 4];
    }
    flat[5] = 5000; // an outlier that widens the buckets
    double[] percents = {0, 0.5, 2.5, 33.3, 50, 97.5, 99.5, 100};

    ColumnStatistics found = Columns.of(flat, columns).describe(percents);

    for (int c = 0; c < columns; c++) {
      int column = c;
      Description alone =
          Description.of(
              IntStream.range(0, rows)
                  .mapToDouble(r -> flat[r * columns + column])
                  .filter(Double::isFinite)
                  .toArray(),
              percents);
      assertThat(found.count()[c]).isEqualTo(alone.count());
      if (alone.count() == 0) {
        assertThat(found.percentiles()[0][c]).isNaN();
        continue;
      }
      assertThat(found.mean()[c]).isCloseTo(alone.mean(), within(1e-11));
      if (alone.count() > 1) {
        assertThat(found.sd()[c]).isCloseTo(alone.sd(), within(1e-11 * Math.max(1, alone.sd())));
      }
      for (int p = 0; p < percents.length; p++) {
        assertThat(found.percentiles()[p][c]).isCloseTo(alone.percentiles()[p], within(1e-11));
      }
    }
  }

  @Test
  void hasNothingToSayOfNoRows() {
    ColumnStatistics found = Columns.of(new float[0], 4).describe(50);

    assertThat(found.count()).containsExactly(0, 0, 0, 0);
    assertThat(found.mean()).containsOnly(Double.NaN);
  }

  @Test
  void refusesAnArrayThatIsNotWholeRows() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Columns.of(new float[5], 2))
        .withMessageContaining("5 numbers");
  }
}
