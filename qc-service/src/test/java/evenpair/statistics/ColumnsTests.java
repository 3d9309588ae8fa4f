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
