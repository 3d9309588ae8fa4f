package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ChartConstantsTests {
  /** Four decimals are given: half a unit of the last. */
  private static final double PRINTED = 0.5e-4 + 1e-9;

  /** Calculated with SciPy; agree with the tables of ISO 7870-2 and Montgomery (from memory). */
  @ParameterizedTest
  @CsvSource({
    "2,.7979,1.1284,.8525,1.8800,2.6587,0,3.2665,0,2.6063,0,3.6859,0,3.2665,2.6587",
    "3,.8862,1.6926,.8884,1.0233,1.9544,0,2.5682,0,2.2760,0,4.3577,0,2.5746,1.7725",
    "5,.9400,2.3259,.8641,.5768,1.4273,0,2.0890,0,1.9636,0,4.9182,0,2.1145,1.2898",
    "6,.9515,2.5344,.8480,.4832,1.2871,.0304,1.9696,.0289,1.8742,0,5.0785,0,2.0038,1.1837",
    "7,.9594,2.7044,.8332,.4193,1.1819,.1177,1.8823,.1129,1.8058,.2047,5.2040,.0757,1.9243,1.1093",
    "10,.9727,3.0775,.7971,.3083,.9754,.2837,1.7163,.2759,1.6694,.6864,5.4687,.2230,1.7770,.9748",
    "15,.9823,3.4718,.7562,.2231,.7885,.4282,1.5718,.4206,1.5440,1.2032,5.7405,.3466,1.6534,.8641",
    "25,.9896,3.9306,.7084,.1526,.6063,.5648,1.4352,.5589,1.4203,1.8053,6.0560,.4593,1.5407,.7632"
  })
  void areThoseOfTheTables(
      int n,
      double c4,
      double d2,
      double d3,
      double a2,
      double a3,
      double b3,
      double b4,
      double b5,
      double b6,
      double upperCaseD1,
      double upperCaseD2,
      double upperCaseD3,
      double upperCaseD4,
      double e2) {
    ChartConstants found = ChartConstants.of(n);

    assertThat(
            new double[] {
              found.c4(),
              found.d2(),
              found.d3(),
              found.a2(),
              found.a3(),
              found.b3(),
              found.b4(),
              found.b5(),
              found.b6(),
              found.upperCaseD1(),
              found.upperCaseD2(),
              found.upperCaseD3(),
              found.upperCaseD4(),
              found.e2()
            })
        .containsExactly(
            new double[] {
              c4,
              d2,
              d3,
              a2,
              a3,
              b3,
              b4,
              b5,
              b6,
              upperCaseD1,
              upperCaseD2,
              upperCaseD3,
              upperCaseD4,
              e2
            },
            within(PRINTED));
  }

  /** Closed forms for two values: Simpson's rule with a step of 0.05 leaves about 1e-7. */
  @Test
  void agreeWithTheClosedFormsForTwo() {
    ChartConstants two = ChartConstants.of(2);

    assertThat(two.d2()).isCloseTo(2 / Math.sqrt(Math.PI), within(1e-6));
    assertThat(two.d3()).isCloseTo(Math.sqrt(2 - 4 / Math.PI), within(1e-6));
    assertThat(two.c4()).isCloseTo(Math.sqrt(2 / Math.PI), within(1e-12));
  }

  @Test
  void needTwoValues() {
    assertThatIllegalArgumentException().isThrownBy(() -> ChartConstants.of(1));
  }
}
