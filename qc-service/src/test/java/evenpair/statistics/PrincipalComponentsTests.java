package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.Random;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PrincipalComponentsTests {
  /** The values of R are printed to 13 decimals; sums over 150 rows round near 1e-14. */
  private static final Offset<Double> AS_R = within(1e-12);

  /** R's {@code prcomp} on its {@code datasets::iris}. */
  @Nested
  class OfIris {
    private final double[][] iris = table("iris/iris.txt");

    @Test
    void haveTheVariancesOfTheCovarianceMatrix() {
      assertThat(PrincipalComponents.ofCovariance(iris).variances())
          .containsExactly(
              new double[] {4.2282417060349, 0.2426707479286, 0.0782095000429, 0.0238350929734},
              AS_R);
    }

    @Test
    void haveTheVariancesOfTheCorrelationMatrix() {
      assertThat(PrincipalComponents.ofCorrelation(iris).variances())
          .containsExactly(
              new double[] {2.9184978165320, 0.9140304714681, 0.1467568755713, 0.0207148364286},
              AS_R);
    }

    @Test
    void beginWithTheDirectionThatVariesMost() {
      PrincipalComponents components = PrincipalComponents.ofCovariance(iris);

      // seven decimals printed
      assertThat(components.vector(0))
          .containsExactly(
              new double[] {0.3613866, -0.0845225, 0.8566706, 0.3582892}, within(5.1e-8));
      assertThat(components.mean())
          .containsExactly(new double[] {5.843333, 3.057333, 3.758, 1.199333}, within(5.1e-7));
    }

    @Test
    void countHowManyHoldAShare() {
      PrincipalComponents components = PrincipalComponents.ofCovariance(iris);

      // shares .92462, .05307, .01710, .00521 from the variances above
      assertThat(components.componentsFor(0.92)).isEqualTo(1);
      assertThat(components.componentsFor(0.95)).isEqualTo(2);
      assertThat(components.componentsFor(1)).isEqualTo(4);
    }
  }

  /** NIST/SEMATECH e-Handbook 6.5.5.2: data and printed three decimals from memory, calculated. */
  @Test
  void ofTheHandbooksCorrelations() {
    double[][] rows = {
      {7, 4, 3}, {4, 1, 8}, {6, 3, 5}, {8, 6, 1}, {8, 5, 7},
      {7, 2, 9}, {5, 3, 3}, {9, 5, 8}, {7, 4, 5}, {8, 2, 2}
    };

    assertThat(PrincipalComponents.ofCorrelation(rows).variances())
        .containsExactly(new double[] {1.76877414, 0.92707592, 0.30414995}, within(5.1e-9));
  }

  /** NIST/SEMATECH e-Handbook 6.5.4.1: mean and covariance, from memory and calculated. */
  @Test
  void holdTheWholeCovarianceMatrix() {
    double[][] rows = {
      {4.0, 2.0, 0.60}, {4.2, 2.1, 0.59}, {3.9, 2.0, 0.58}, {4.3, 2.1, 0.62}, {4.1, 2.2, 0.63}
    };
    double[][] covariance = {
      {0.025, 0.0075, 0.00175}, {0.0075, 0.0070, 0.00135}, {0.00175, 0.00135, 0.00043}
    };

    PrincipalComponents components = PrincipalComponents.ofCovariance(rows);

    // exact decimals; numbers near 4 with rounding near 1e-15
    assertThat(components.mean()).containsExactly(new double[] {4.10, 2.08, 0.604}, within(1e-14));
    for (int i = 0; i < 3; i++) {
      for (int j = 0; j < 3; j++) {
        double sum = 0;
        for (int k = 0; k < 3; k++) {
          sum += components.variances()[k] * components.vector(k)[i] * components.vector(k)[j];
        }
        assertThat(sum).isCloseTo(covariance[i][j], within(1e-14));
      }
    }
  }

  /**
   * T² of subgroup means, as R's package qcc documents it for the data of T. P. Ryan, Statistical
   * Methods for Quality Improvement: 20 groups of four, groups 10 and 20 signal.
   */
  @Nested
  class HotellingsTSquared {
    private static final int[][] FIRST = {
      {72, 84, 79, 49}, {56, 87, 33, 42}, {55, 73, 22, 60}, {44, 80, 54, 74}, {97, 26, 48, 58},
      {83, 89, 91, 62}, {47, 66, 53, 58}, {88, 50, 84, 69}, {57, 47, 41, 46}, {26, 39, 52, 48},
      {46, 27, 63, 34}, {49, 62, 78, 87}, {71, 63, 82, 55}, {71, 58, 69, 70}, {67, 69, 70, 94},
      {55, 63, 72, 49}, {49, 51, 55, 76}, {72, 80, 61, 59}, {61, 74, 62, 57}, {35, 38, 41, 46}
    };
    private static final int[][] SECOND = {
      {23, 30, 28, 10}, {14, 31, 8, 9}, {13, 22, 6, 16}, {9, 28, 15, 25}, {36, 10, 14, 15},
      {30, 35, 36, 18}, {12, 18, 14, 16}, {31, 11, 30, 19}, {14, 10, 8, 10}, {7, 11, 35, 30},
      {10, 8, 19, 9}, {11, 20, 27, 31}, {22, 16, 31, 15}, {21, 19, 17, 20}, {18, 19, 18, 35},
      {15, 16, 20, 12}, {13, 14, 16, 26}, {22, 28, 18, 17}, {19, 20, 16, 14}, {10, 11, 13, 16}
    };
    private static final double[] PUBLISHED = {
      2.2416, 0.6527, 1.2722, 0.2201, 1.5279, 8.9818, 1.3202, 3.7736, 4.9485, 63.7604,
      6.5510, 1.3674, 1.3632, 3.2561, 7.4099, 2.7638, 0.1243, 1.3265, 3.5039, 13.0376
    };

    @Test
    void ofGroupMeansAreAsPublished() {
      double[][] means = new double[20][];
      double[][] inside = new double[80][];
      for (int g = 0; g < 20; g++) {
        means[g] = new double[] {mean(FIRST[g]), mean(SECOND[g])};
        for (int i = 0; i < 4; i++) {
          inside[4 * g + i] = new double[] {FIRST[g][i] - means[g][0], SECOND[g][i] - means[g][1]};
        }
      }
      // Deviations inside the groups have mean 0; their pooled covariance divides by 20·3, the
      // table's by 79, which scales T² by 60/79. A group's mean of four has four times the weight.
      PrincipalComponents pooled = PrincipalComponents.ofCovariance(inside);

      for (int g = 0; g < 20; g++) {
        double[] fromCentre = {means[g][0] - 60.375, means[g][1] - 18.4875};
        double found = 4 * pooled.tSquared(fromCentre, 2) * 60 / 79;
        assertThat(found).isCloseTo(PUBLISHED[g], within(0.000051)); // four decimals
      }
    }

    @Test
    void onAllComponentsOfItsOwnRowsAddUp() {
      double[][] iris = table("iris/iris.txt");
      PrincipalComponents components = PrincipalComponents.ofCovariance(iris);

      double sum = Arrays.stream(iris).mapToDouble(row -> components.tSquared(row, 4)).sum();

      // Σ (x − m)ᵀ S⁻¹ (x − m) = (n − 1)·p = 149·4, exact but for rounding
      assertThat(sum).isCloseTo(596, within(1e-9));
    }

    private static double mean(int[] values) {
      return Arrays.stream(values).average().orElseThrow();
    }
  }

  @Test
  void explainARowAsFarAsTheyHoldIt() {
    double[][] iris = table("iris/iris.txt");
    PrincipalComponents components = PrincipalComponents.ofCorrelation(iris);

    double[] explained = components.explained(iris[41], 4);

    for (int c = 0; c < 4; c++) {
      assertThat(explained[c]).isCloseTo(iris[41][c] - components.mean()[c], within(1e-12));
    }
  }

  /** Shares .92462, .05307 … against pieces 25/48 = .5208, 13/48, 7/48, 3/48 of a stick in four. */
  @Test
  void tellWhatChanceWouldNotDraw() {
    PrincipalComponents components = PrincipalComponents.ofCovariance(table("iris/iris.txt"));

    assertThat(components.componentsAboveBrokenStick()).isEqualTo(1);
    double[] row = {
      5.843333 + 0.3613866, 3.057333 - 0.0845225, 3.758 + 0.8566706, 1.199333 + 0.3582892
    };
    // one step along the first direction; seven decimals printed, four of them squared
    assertThat(components.scores(row, 2)[0]).isCloseTo(1, within(2e-6));
    assertThat(components.scores(row, 2)[1]).isCloseTo(0, within(2e-6));
  }

  @Test
  void areAsManyAsTheRowsSpan() {
    // three rows of 241: two directions at most, whatever the length
    double[][] rows = new double[3][241];
    Random random = new Random(7);
    for (double[] row : rows) {
      Arrays.setAll(row, i -> random.nextGaussian());
    }
    assertThat(PrincipalComponents.ofCovariance(rows).variances()).hasSize(2);
    rows[2] = rows[1].clone();
    assertThat(PrincipalComponents.ofCovariance(rows).variances()).hasSize(1);
    assertThat(PrincipalComponents.ofCovariance(new double[4][5]).variances()).isEmpty();
  }

  @Test
  void refuseWhatIsNoTable() {
    assertThatThrownBy(() -> PrincipalComponents.ofCovariance(new double[][] {{1, 2}}))
        .hasMessageContaining("two rows");
    assertThatThrownBy(() -> PrincipalComponents.ofCovariance(new double[][] {{1}, {1, 2}}))
        .hasMessageContaining("equally long");
    assertThatThrownBy(() -> PrincipalComponents.ofCovariance(new double[][] {{1}, {Double.NaN}}))
        .hasMessageContaining("finite");
    assertThatThrownBy(() -> PrincipalComponents.ofCorrelation(new double[][] {{1, 1}, {1, 2}}))
        .hasMessageContaining("column 0 does not vary");
  }

  private static double[][] table(String name) {
    String resource = "/statistics/" + name;
    try (InputStream in = PrincipalComponentsTests.class.getResourceAsStream(resource)) {
      return new String(in.readAllBytes(), StandardCharsets.UTF_8)
          .lines()
          .map(line -> Arrays.stream(line.split(" ")).mapToDouble(Double::parseDouble).toArray())
          .toArray(double[][]::new);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
