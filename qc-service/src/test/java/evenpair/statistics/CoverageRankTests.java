package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.OptionalInt;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class CoverageRankTests {
  @Nested
  class UnitsNeeded {
    /**
     * One-sided non-parametric sample sizes of Wilks, calculated independently: the smallest n with
     * 1 − pⁿ ≥ γ (29, 59, 149, 299, 598 at 95 %; the others likewise).
     */
    @ParameterizedTest
    @CsvSource({
      "0.90, 0.95, 29",
      "0.95, 0.95, 59",
      "0.98, 0.95, 149",
      "0.99, 0.95, 299",
      "0.995, 0.95, 598",
      "0.90, 0.90, 22",
      "0.95, 0.90, 45",
      "0.95, 0.99, 90",
      "0.99, 0.99, 459"
    })
    void areThoseOfWilks(double share, double confidence, int units) {
      CoverageRank rank = new CoverageRank(share, confidence);

      assertThat(rank.unitsNeeded()).isEqualTo(units);
      assertThat(rank.of(units)).isEqualTo(OptionalInt.of(units));
      assertThat(rank.of(units - 1)).isEmpty();
    }
  }

  @Nested
  class Rank {
    /**
     * By the plain sum of binomial terms, a second route. The terms are summed in double: 1e-12 of
     * them is far below the distance of any sum here to its confidence.
     */
    @ParameterizedTest
    @CsvSource({"0.98, 0.95, 250", "0.98, 0.95, 500", "0.9, 0.9, 37", "0.5, 0.99, 12"})
    void isTheSmallestWhosePromiseHolds(double share, double confidence, int n) {
      int k = new CoverageRank(share, confidence).of(n).orElseThrow();

      assertThat(below(k, n, share)).isGreaterThanOrEqualTo(confidence);
      assertThat(below(k - 1, n, share)).isLessThan(confidence);
    }

    /**
     * P(X < k), from the top down: from below, the first terms are less than the smallest double.
     */
    private static double below(int k, int n, double p) {
      double term = Math.pow(p, n);
      double sum = 0;
      for (int x = n; x >= k; x--) {
        sum += term;
        term *= (double) x / (n - x + 1) * (1 - p) / p;
      }
      return 1 - sum;
    }

    @Test
    void needsAValue() {
      assertThatIllegalArgumentException().isThrownBy(() -> new CoverageRank(0.9, 0.9).of(0));
    }
  }

  @Nested
  class Promised {
    @Test
    void isWhatTheLargestValueCanTell() {
      // by hand: 0.05^(1/59) = exp(ln 0.05/59) = 0.950492; 1e-6 is its last digit
      assertThat(CoverageRank.promised(59, 0.95)).isCloseTo(0.950492, within(1e-6));
    }

    @ParameterizedTest
    @CsvSource({"20", "149", "598"})
    void isJustPromised(int n) {
      double promised = CoverageRank.promised(n, 0.95);

      assertThat(new CoverageRank(promised - 1e-9, 0.95).of(n)).isPresent();
      assertThat(new CoverageRank(promised + 1e-9, 0.95).of(n)).isEmpty();
    }
  }

  @ParameterizedTest
  @CsvSource({"0, 0.9", "1, 0.9", "0.9, 0", "0.9, 1", "NaN, 0.9", "0.9, NaN"})
  void refuseWhatIsNoProbability(double share, double confidence) {
    assertThatIllegalArgumentException().isThrownBy(() -> new CoverageRank(share, confidence));
  }
}
