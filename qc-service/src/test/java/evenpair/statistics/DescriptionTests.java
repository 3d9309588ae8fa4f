package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DescriptionTests {
  /**
   * NIST StRD, univariate summary statistics; the certified values stand in the copied files.
   * Tolerance: NIST certifies 15 digits; a stored number x differs from the printed one by up to
   * x·2⁻⁵³, so the mean may be off by as much, and so may the standard deviation (absolutely, not
   * relative to itself, and from both x and m), plus its own 15th digit. Twice that is allowed.
   */
  @Nested
  class AgainstNistReferenceDatasets {
    @ParameterizedTest
    @CsvSource({
      "NumAcc1, 3, 10000002, 1",
      "NumAcc2, 1001, 1.2, 0.1",
      "NumAcc3, 1001, 1000000.2, 0.1",
      "NumAcc4, 1001, 10000000.2, 0.1",
      "Michelso, 100, 299.852400000000, 0.0790105478190518",
      "Mavro, 50, 2.00185600000000, 0.000429123454003053",
      "PiDigits, 5000, 4.53480000000000, 2.86733906028871",
      "Lew, 200, -177.435000000000, 277.332168044316",
      "Lottery, 218, 518.958715596330, 291.699727470969"
    })
    void findsTheCertifiedMeanAndStandardDeviation(String dataset, int n, double mean, double sd) {
      Description found = Description.of(StrdFile.univariate(dataset));

      double stored = Math.abs(mean) * 0x1p-53;
      assertThat(found.count()).isEqualTo(n);
      assertThat(found.mean()).isCloseTo(mean, within(2 * stored + 5e-15 * Math.abs(mean)));
      assertThat(found.sd()).isCloseTo(sd, within(4 * stored + 5e-15 * sd));
    }

    @Test
    void givesWhatAOnePassFormulaLoses() {
      // NumAcc4 again: Σx² − n·m² keeps no digit of the spread there, which shows that the
      // certified case above can fail.
      double[] values = StrdFile.univariate("NumAcc4");
      double sum = 0;
      double squares = 0;
      for (double value : values) {
        sum += value;
        squares += value * value;
      }
      double onePass =
          Math.sqrt(Math.abs(squares - sum * sum / values.length) / (values.length - 1));

      assertThat(Math.abs(onePass - 0.1)).isGreaterThan(1e-6);
      assertThat(Description.of(values).sd()).isCloseTo(0.1, within(1e-8));
    }
  }

  @Nested
  class SmallSamples {
    @Test
    void haveNoSpreadWithOneNumber() {
      Description one = Description.of(new double[] {7.5}, 50);

      assertThat(one.mean()).isEqualTo(7.5);
      assertThat(one.sd()).isNaN();
      assertThat(one.percentiles()).containsExactly(7.5);
    }

    @Test
    void haveNothingWithoutNumbers() {
      Description none = Description.of(new double[0], 50);

      assertThat(none.count()).isZero();
      assertThat(none.mean()).isNaN();
      assertThat(none.percentiles()[0]).isNaN();
    }

    @Test
    void refuseWhatIsNotANumber() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Description.of(new double[] {1, Double.NaN}));
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Description.of(new double[] {Double.NEGATIVE_INFINITY, 1}));
    }
  }
}
