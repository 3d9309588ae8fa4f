package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;

class TSquaredLimitTests {
  @Test
  void ofAMemberIsGrubbsForOneVariable() {
    // Grubbs' critical value for n = 195, 5 % two-sided: 3.597906 (calculated; the NIST e-Handbook
    // prints 3.597898, from memory). It is √T² with 5 % shared out among 195 rows; six decimals.
    assertThat(Math.sqrt(TSquaredLimit.ofMember(195, 1, 0.05 / 195)))
        .isCloseTo(3.597906, within(5.1e-7));
  }

  @Test
  void ofAnotherRowIsStudentsForOneVariable() {
    // t²·(1 + 1/n) with t = 2.119905 for 16 degrees of freedom and 5 % (any table, six decimals: a
    // relative error of 2.4e-7, doubled by the square)
    assertThat(TSquaredLimit.ofAnother(17, 1, 0.05))
        .isCloseTo(2.119905 * 2.119905 * (1 + 1.0 / 17), within(3e-6));
  }

  @Test
  void areExceededAsOftenAsAsked() {
    double alpha = 0.05;
    int n = 12;
    int p = 2;
    double member = TSquaredLimit.ofMember(n, p, alpha);
    double another = TSquaredLimit.ofAnother(n, p, alpha);

    Random random = new Random(42);
    int draws = 4000;
    int members = 0;
    int others = 0;
    for (int i = 0; i < draws; i++) {
      double[][] rows = new double[n][p];
      for (double[] row : rows) {
        draw(row, random);
      }
      double[] further = new double[p];
      draw(further, random);
      PrincipalComponents components = PrincipalComponents.ofCovariance(rows);
      members += components.tSquared(rows[0], p) > member ? 1 : 0;
      others += components.tSquared(further, p) > another ? 1 : 0;
    }
    // four standard errors of a share of 5 % in 4000 independent draws: 0.0138
    double error = Math.sqrt(alpha * (1 - alpha) / draws);
    assertThat((double) members / draws).isCloseTo(alpha, within(4 * error));
    assertThat((double) others / draws).isCloseTo(alpha, within(4 * error));
  }

  private static void draw(double[] row, Random random) {
    double common = random.nextGaussian();
    for (int c = 0; c < row.length; c++) {
      row[c] = 3 * common + random.nextGaussian();
    }
  }

  @Test
  void needEnoughRows() {
    assertThatThrownBy(() -> TSquaredLimit.ofMember(3, 2, 0.05)).hasMessageContaining("4 rows");
    assertThatThrownBy(() -> TSquaredLimit.ofAnother(9, 2, 1)).hasMessageContaining("0 and 1");
  }
}
