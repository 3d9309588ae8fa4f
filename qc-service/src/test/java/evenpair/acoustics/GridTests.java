package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class GridTests {
  private static final int AT_1_KHZ = 136;

  @Nested
  class Points {
    @Test
    void spanTwentyHertzToTwentyKilohertzWithOneKilohertzAmongThem() {
      // 10^(104/80) and 10^(344/80), computed apart from the code; exact to the digits written
      assertThat(Grid.hz(0)).isCloseTo(19.952623, within(1e-6));
      assertThat(Grid.hz(240)).isCloseTo(19952.623150, within(1e-6));
      assertThat(Grid.hz(AT_1_KHZ)).isCloseTo(1000, within(1e-9));
      assertThat(Grid.frequencies()).hasSize(241).isSorted();
    }

    // IEC 61260-1:2014, from memory and recomputed: third-octave and 1/12-octave band edges around
    // 1 kHz are points of this
    // grid, its own 1/24-octave edges are midbands there (for an even fraction 1 kHz is an edge).
    // Four decimals are given.
    @ParameterizedTest
    @CsvSource({
      "132, 891.2509",
      "140, 1122.0185",
      "134, 944.0609",
      "138, 1059.2537",
      "135, 971.6280",
      "137, 1029.2005"
    })
    void fallOnTheStandardsBandEdges(int index, double hz) {
      assertThat(Grid.hz(index)).isCloseTo(hz, within(5e-5));
    }

    @ParameterizedTest
    @CsvSource({"136, 985.7119, 1014.4952", "137, 1014.4952, 1044.1190"})
    void haveTheStandardsMidbandsAsEdges(int index, double from, double to) {
      assertThat(Grid.lowerEdge(index)).isCloseTo(from, within(5e-5));
      assertThat(Grid.upperEdge(index)).isCloseTo(to, within(5e-5));
    }

    @Test
    void haveBandsThatTileWithoutGapOrOverlap() {
      // 1e-12 relative: two roundings of a power of ten
      for (int i = 1; i < Grid.POINTS; i++) {
        assertThat(Grid.lowerEdge(i) / Grid.upperEdge(i - 1)).isCloseTo(1, within(1e-12));
      }
    }

    @ParameterizedTest
    @CsvSource({"1000, 136", "1014, 136", "1015, 137", "5, 0", "90000, 240", "19.95, 0"})
    void areFoundByTheNearestFrequency(double hz, int index) {
      assertThat(Grid.nearest(hz)).isEqualTo(index);
    }

    @Test
    void refuseAFrequencyThatIsNone() {
      assertThatIllegalArgumentException().isThrownBy(() -> Grid.nearest(0));
      assertThatIllegalArgumentException().isThrownBy(() -> Grid.nearest(Double.NaN));
    }
  }

  @Nested
  class Labels {
    // ISO 3, R80 and R10 rounded values, from memory
    @ParameterizedTest
    @CsvSource({
      "0, 20",
      "1, 20.6",
      "8, 25",
      "56, 100",
      "57, 103",
      "136, 1000",
      "160, 2000",
      "163, 2180",
      "240, 20000",
      "239, 19500",
      "63, 122"
    })
    void areTheRoundedPreferredNumbers(int index, double label) {
      assertThat(Grid.label(index)).isEqualTo(label);
    }

    @Test
    void deviateFromTheExactFrequencyAsMuchAsTheStandardsRoundingDoes() {
      // greatest deviations of R80's rounded values from 10^(k/80): +1.283 % and −1.211 %, computed
      // from ISO 3
      double[] percent =
          IntStream.range(0, Grid.POINTS)
              .mapToDouble(i -> 100 * (Grid.label(i) / Grid.hz(i) - 1))
              .toArray();
      assertThat(IntStream.range(0, Grid.POINTS).mapToDouble(i -> percent[i]).max().orElseThrow())
          .isCloseTo(1.283, within(0.0005));
      assertThat(IntStream.range(0, Grid.POINTS).mapToDouble(i -> percent[i]).min().orElseThrow())
          .isCloseTo(-1.211, within(0.0005));
    }

    @Test
    void holdEverySecondOfTheCoarserSeries() {
      double[] r40 = {
        1.00, 1.06, 1.12, 1.18, 1.25, 1.32, 1.40, 1.50, 1.60, 1.70, 1.80, 1.90, 2.00, 2.12, 2.24,
            2.36, 2.50, 2.65, 2.80, 3.00,
        3.15, 3.35, 3.55, 3.75, 4.00, 4.25, 4.50, 4.75, 5.00, 5.30, 5.60, 6.00, 6.30, 6.70, 7.10,
            7.50, 8.00, 8.50, 9.00, 9.50
      };
      for (int k = 0; k < r40.length; k++) {
        assertThat(Grid.label(AT_1_KHZ + 2 * k)).isCloseTo(1000 * r40[k], within(1e-9));
      }
    }
  }

  @Nested
  class Bands {
    @Test
    void holdTheirEndsByLabel() {
      Band bass = new Band(20, 200);
      assertThat(bass.firstIndex()).isZero();
      assertThat(Grid.label(bass.lastIndex())).isEqualTo(200);
      assertThat(bass.points()).isEqualTo(81);
      assertThat(bass.holds(0)).isTrue();
      assertThat(bass.holds(81)).isFalse();
    }

    @Test
    void mayLieBetweenTwoPoints() {
      assertThat(new Band(1001, 1020).points()).isZero();
    }

    @Test
    void refuseToFall() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> new Band(200, 20))
          .withMessageContaining("rise");
      assertThatIllegalArgumentException().isThrownBy(() -> new Band(0, 20));
      assertThatIllegalArgumentException().isThrownBy(() -> new Band(Double.NaN, 20));
    }
  }
}
