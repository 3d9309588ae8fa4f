package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Calculated by integration with SciPy and by R's package tolerance, which agree to four decimals;
 * equal to the tables of ISO 16269-6 as remembered. Half a unit of the last decimal.
 */
class ToleranceFactorTests {
  private static final double FOUR = 0.5e-4 + 1e-8;

  @ParameterizedTest
  @CsvSource({
    "5, 3.4066, 4.2027, 5.7411",
    "10, 2.3546, 2.9110, 3.9811",
    "20, 1.9260, 2.3960, 3.2952",
    "50, 1.6456, 2.0650, 2.8624",
    "100, 1.5267, 1.9265, 2.6840"
  })
  void onOneSideIsThatOfTheTables(int n, double p90, double p95, double p99) {
    assertThat(ToleranceFactor.oneSided(n, 0.90, 0.95)).isCloseTo(p90, within(FOUR));
    assertThat(ToleranceFactor.oneSided(n, 0.95, 0.95)).isCloseTo(p95, within(FOUR));
    assertThat(ToleranceFactor.oneSided(n, 0.99, 0.95)).isCloseTo(p99, within(FOUR));
  }

  /**
   * One unit of the last decimal; the row of 20 recalculated with SciPy (R prints 2.7604, 3.6211).
   */
  @ParameterizedTest
  @CsvSource({
    "5, 4.2906, 5.0769, 6.5980",
    "10, 2.8563, 3.3934, 4.4369",
    "20, 2.3188, 2.7603, 3.6210",
    "50, 1.9990, 2.3816, 3.1288",
    "100, 1.8748, 2.2339, 2.9355"
  })
  void onBothSidesIsThatOfTheTables(int n, double p90, double p95, double p99) {
    assertThat(ToleranceFactor.twoSided(n, 0.90, 0.95)).isCloseTo(p90, within(1e-4));
    assertThat(ToleranceFactor.twoSided(n, 0.95, 0.95)).isCloseTo(p95, within(1e-4));
    assertThat(ToleranceFactor.twoSided(n, 0.99, 0.95)).isCloseTo(p99, within(1e-4));
  }

  /** NIST/SEMATECH e-Handbook 7.2.6.3 (from memory, calculated): n 43, p .90, γ .99. */
  @Test
  void agreesWithTheHandbook() {
    assertThat(ToleranceFactor.oneSided(43, 0.90, 0.99)).isCloseTo(1.8740, within(FOUR));
    assertThat(ToleranceFactor.twoSided(43, 0.90, 0.99)).isCloseTo(2.2228, within(FOUR));
  }

  /** Wilks; calculated. */
  @ParameterizedTest
  @CsvSource({
    ".90, .95, 29, 46",
    ".95, .95, 59, 93",
    ".95, .99, 90, 130",
    ".99, .95, 299, 473",
    ".99, .99, 459, 662"
  })
  void countsTheUnitsThatNeedNoDistribution(double p, double confidence, int one, int two) {
    assertThat(ToleranceFactor.unitsForLargest(p, confidence)).isEqualTo(one);
    assertThat(ToleranceFactor.unitsForBoth(p, confidence)).isEqualTo(two);
  }

  @Test
  void needsTwoValues() {
    assertThatIllegalArgumentException().isThrownBy(() -> ToleranceFactor.oneSided(1, 0.95, 0.95));
    assertThatIllegalArgumentException().isThrownBy(() -> ToleranceFactor.twoSided(9, 1, 0.95));
  }
}
