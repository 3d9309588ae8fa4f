package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.math3.stat.descriptive.rank.Percentile;
import org.apache.commons.math3.stat.descriptive.rank.Percentile.EstimationType;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantilesTests {
  /**
   * By hand from h = (n − 1)·p with n = 5: 0.025 gives h = 0.1, so 1 + 0.1·(2 − 1); 0.9 gives h =
   * 3.6, so 4 + 0.6·(10 − 4).
   */
  @ParameterizedTest
  @CsvSource({"0, 1", "0.025, 1.1", "0.25, 2", "0.5, 3", "0.9, 7.6", "0.975, 9.4", "1, 10"})
  void followsTheDefinitionByHand(double probability, double expected) {
    double[] sorted = {1, 2, 3, 4, 10};

    // five roundings of numbers up to 10
    assertThat(Quantiles.ofSorted(sorted, 5, probability))
        .isCloseTo(expected, within(5 * Math.ulp(10.0)));
  }

  /**
   * Commons Math's percentile of type R-7, an independent implementation of the same definition.
   */
  @ParameterizedTest
  @ValueSource(strings = {"Lew", "Lottery", "Michelso", "Mavro"})
  void agreesWithAnotherImplementation(String dataset) {
    double[] values = StrdFile.univariate(dataset);
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    Percentile other = new Percentile().withEstimationType(EstimationType.R_7);
    other.setData(values);

    double largest = Math.max(Math.abs(sorted[0]), Math.abs(sorted[sorted.length - 1]));
    for (double percent : new double[] {0.5, 2.5, 25, 50, 97.5, 99.5}) {
      // both interpolate once, from a place that is rounded once: some units in the last place of
      // the largest value times n
      assertThat(Quantiles.ofSorted(sorted, sorted.length, percent / 100))
          .isCloseTo(other.evaluate(percent), within(8 * sorted.length * Math.ulp(largest)));
    }
  }

  @ParameterizedTest
  @CsvSource({"0.5, 2", "0.025, 40", "0.975, 40", "0.005, 200", "0.995, 200"})
  void saysHowManyUnitsAPercentileNeeds(double probability, int units) {
    assertThat(Quantiles.unitsNeeded(probability)).isEqualTo(units);
  }

  @Test
  void refusesAProbabilityOutsideItsRange() {
    double[] sorted = {1, 2};
    assertThatIllegalArgumentException().isThrownBy(() -> Quantiles.ofSorted(sorted, 2, 1.01));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> Quantiles.ofSorted(sorted, 2, Double.NaN));
    assertThatIllegalArgumentException().isThrownBy(() -> Quantiles.unitsNeeded(0));
  }
}
