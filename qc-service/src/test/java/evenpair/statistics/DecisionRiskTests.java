package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.DecisionRisk.Global;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DecisionRiskTests {
  /** Published and calculated values below have six decimals: half a unit of the last one. */
  private static final double SIX_DECIMALS = 5.1e-7;

  private static final double NONE = Double.POSITIVE_INFINITY;

  /** The examples of JCGM 106:2012 clause 7: data from memory, six decimals calculated. */
  @Nested
  class Conformance {
    @Test
    void ofAnOilBetweenTwoLimits() {
      assertThat(new DecisionRisk(12.5, 16.3).conformance(13.6, 1.8))
          .isCloseTo(0.662630, within(SIX_DECIMALS));
    }

    @Test
    void ofAVoltageBelowAnUpperLimit() {
      assertThat(new DecisionRisk(-NONE, -5.40).conformance(-5.47, 0.05))
          .isCloseTo(0.919243, within(SIX_DECIMALS));
    }

    @Test
    void ofAPressureAboveALowerLimit() {
      // printed 0.989 for z rounded to 2.29; 0.989010 holds for the unrounded 19.7/8.6
      assertThat(new DecisionRisk(490, NONE).conformance(509.7, 8.6))
          .isCloseTo(0.989010, within(SIX_DECIMALS));
    }

    @Test
    void leavesOneInAThousandToASpeedFarEnoughAboveTheLimit() {
      // 106.59 km/h is rounded by up to 0.005, which changes the probability by up to 7.5e-6
      double v = 106.59;
      assertThat(new DecisionRisk(-NONE, 100).conformance(v, 0.02 * v))
          .isCloseTo(0.001, within(1e-5));
    }

    @Test
    void isCertainWithoutUncertainty() {
      DecisionRisk tolerance = new DecisionRisk(-1, 1);

      assertThat(tolerance.conformance(1, 0)).isEqualTo(1);
      assertThat(tolerance.conformance(1.001, 0)).isZero();
      assertThat(tolerance.consumersRiskAt(1, 0)).isZero();
      assertThat(tolerance.consumersRiskAt(-1.001, 0)).isEqualTo(1);
    }

    @Test
    void andSpecificConsumersRiskMakeOne() {
      DecisionRisk tolerance = new DecisionRisk(12.5, 16.3);

      // two roundings of a number near 1
      assertThat(tolerance.conformance(13.6, 1.8) + tolerance.consumersRiskAt(13.6, 1.8))
          .isCloseTo(1, within(1e-15));
    }

    @Test
    void keepsTheDigitsOfARiskFarBelowOne() {
      // Φ(−10) = 7.619853024160e-24 (any table of the normal distribution); relative 1e-9
      assertThat(new DecisionRisk(-NONE, 10).consumersRiskAt(0, 1))
          .isCloseTo(7.619853024160e-24, within(1e-32));
    }
  }

  /**
   * JCGM 106:2012 clause 9, the resistor: parameters from memory, risks calculated independently.
   */
  @Nested
  class GlobalRisksOfTheResistor {
    private final DecisionRisk tolerance = new DecisionRisk(1499.8, 1500.2);

    @ParameterizedTest
    @CsvSource({
      "0, .018942, .037208",
      ".02, .009878, .069027",
      ".04, .004334, .114657",
      ".06, .001575, .174376",
      ".08, .000469, .247670",
      "-.04, .044898, .007097"
    })
    void areTradedByTheGuardBand(double w, double consumer, double producer) {
      Global risks = tolerance.global(1500, 0.12, 0.04, w);

      assertThat(risks.consumer()).isCloseTo(consumer, within(SIX_DECIMALS));
      assertThat(risks.producer()).isCloseTo(producer, within(SIX_DECIMALS));
    }

    @Test
    void startFromTheShareThatDoesNotConform() {
      assertThat(tolerance.global(1500, 0.12, 0.04, 0).nonconforming())
          .isCloseTo(0.095581, within(SIX_DECIMALS));
    }
  }

  /** Tolerance ±1, mean 0: calculated independently. */
  @ParameterizedTest
  @CsvSource({
    ".5, .125, 0, .008006, .014851",
    ".5, .125, .25, .000195, .100304",
    ".3333333333333333, .1, 0, .000652, .002012",
    ".5, .16666666666666667, 0, .009755, .022034"
  })
  void globalRisksOfTheUnitTolerance(
      double u0, double um, double w, double consumer, double producer) {
    Global risks = new DecisionRisk(-1, 1).global(0, u0, um, w);

    assertThat(risks.consumer()).isCloseTo(consumer, within(SIX_DECIMALS));
    assertThat(risks.producer()).isCloseTo(producer, within(SIX_DECIMALS));
  }

  @Nested
  class GlobalRisks {
    @ParameterizedTest
    @CsvSource({
      "-1, 1, 0.2, 0.5, 0.2, 0.1",
      "-1, 1, -0.9, 0.3, 0.05, -0.1",
      "-1, Infinity, -0.3, 0.6, 0.4, 0.2",
      "-Infinity, 1, 0.8, 0.5, 0.01, 0"
    })
    void agreeWithDrawnItems(
        double lower, double upper, double y0, double u0, double um, double w) {
      Global risks = new DecisionRisk(lower, upper).global(y0, u0, um, w);

      Random random = new Random(20261125);
      int draws = 400_000;
      int consumer = 0;
      int producer = 0;
      int accepted = 0;
      for (int i = 0; i < draws; i++) {
        double truth = y0 + u0 * random.nextGaussian();
        double found = truth + um * random.nextGaussian();
        boolean conforms = truth >= lower && truth <= upper;
        boolean accepts = found >= lower + w && found <= upper - w;
        consumer += accepts && !conforms ? 1 : 0;
        producer += !accepts && conforms ? 1 : 0;
        accepted += accepts ? 1 : 0;
      }
      // Four standard errors of a counted share, √(p(1−p)/N): a true formula misses one of these
      // twelve comparisons with a chance below 12 · 6.3e-5, and the seed is fixed
      assertShare(consumer, draws, risks.consumer());
      assertShare(producer, draws, risks.producer());
      assertShare(accepted, draws, risks.accepted());
    }

    private static void assertShare(int count, int draws, double probability) {
      double error = Math.sqrt(probability * (1 - probability) / draws);
      assertThat((double) count / draws).isCloseTo(probability, within(4 * error));
    }

    @ParameterizedTest
    @CsvSource({"0.5, 1e-6", "1e-6, 0.5", "0.5, 0.5", "0.02, 3", "3, 0.02"})
    void balance(double u0, double um) {
      // P(accepted) = P(conforming) + R_C − R_P, whatever the ratio of the two spreads
      Global risks = new DecisionRisk(-1, 0.7).global(0.1, u0, um, 0.05);

      assertThat(risks.accepted())
          .isCloseTo(
              1 - risks.nonconforming() + risks.consumer() - risks.producer(), within(1e-12));
    }

    @Test
    void withoutMeasurementErrorAreTheSpanBetweenTheLimits() {
      DecisionRisk tolerance = new DecisionRisk(-1, 1);

      Global open = tolerance.global(0, 0.5, 0, 0);
      Global guarded = tolerance.global(0, 0.5, 0, 0.25);
      Global loose = tolerance.global(0, 0.5, 0, -0.25);

      assertThat(open.consumer()).isZero();
      assertThat(open.producer()).isZero();
      // 2·(Φ(2) − Φ(1.5)) and 2·(Φ(2.5) − Φ(2)); Φ(1.5) .9331927987, Φ(2) .9772498681, Φ(2.5)
      // .9937903347 (any table): ten decimals, doubled
      assertThat(guarded.producer()).isCloseTo(2 * (0.9772498681 - 0.9331927987), within(2e-10));
      assertThat(guarded.consumer()).isZero();
      assertThat(loose.consumer()).isCloseTo(2 * (0.9937903347 - 0.9772498681), within(2e-10));
      assertThat(loose.producer()).isZero();
    }

    @Test
    void areApproachedAsMeasurementErrorVanishes() {
      DecisionRisk tolerance = new DecisionRisk(-1, 1);

      Global exact = tolerance.global(0, 0.5, 0, 0.25);
      Global nearly = tolerance.global(0, 0.5, 1e-7, 0.25);

      // an error of 1e-7 moves items across a limit where the density is at most 0.8
      assertThat(nearly.producer()).isCloseTo(exact.producer(), within(1e-7));
    }

    @Test
    void ofItemsAllAlikeAreThoseOfTheOneItem() {
      DecisionRisk tolerance = new DecisionRisk(-1, 1);

      Global inside = tolerance.global(0.5, 0, 0.25, 0);
      Global outside = tolerance.global(1.25, 0, 0.25, 0);
      Global neither = tolerance.global(0.5, 0, 0, 0);

      // Φ(−2) = .0227501319 and Φ(−1) = .1586552539 (any table)
      assertThat(inside.producer()).isCloseTo(0.0227501319, within(1e-8));
      assertThat(inside.consumer()).isZero();
      assertThat(outside.consumer()).isCloseTo(0.1586552539, within(1e-10));
      assertThat(outside.producer()).isZero();
      assertThat(neither).isEqualTo(new Global(0, 0, 0, 1));
    }

    @Test
    void ofLimitsThatTheGuardBandClosesAcceptNothing() {
      Global risks = new DecisionRisk(-1, 1).global(0, 0.5, 0.1, 1);

      assertThat(risks.consumer()).isZero();
      assertThat(risks.accepted()).isZero();
      assertThat(risks.producer()).isCloseTo(1 - risks.nonconforming(), within(1e-12));
    }
  }

  /** ILAC-G8:09/2019, its table of guard bands from memory, the probabilities calculated. */
  @Nested
  class GuardBands {
    @ParameterizedTest
    @CsvSource({
      "0, .5, 1e-15",
      ".83, .048457, 5.1e-7",
      "1, .022750, 5.1e-7",
      "1.5, .001350, 5.1e-7",
      "3, 9.87e-10, 5.1e-13"
    })
    void leaveThatMuchFalseAcceptance(double r, double probability, double rounding) {
      assertThat(DecisionRisk.falseAcceptance(r)).isCloseTo(probability, within(rounding));
    }

    @Test
    void belowZeroRejectOnlyWhatSurelyDoesNotConform() {
      // w = −U: of what is rejected beyond the limit + U less than 2.5 % conforms
      assertThat(1 - DecisionRisk.falseAcceptance(-1)).isCloseTo(0.022750, within(SIX_DECIMALS));
    }

    @ParameterizedTest
    @CsvSource({".90, .640776", ".95, .822427", ".975, .979982", ".99, 1.163174", ".5, 0"})
    void areFoundForAConfidence(double confidence, double r) {
      // ISO 14253-1:2017 asks for 0.95: 1.645 u, which is .822427 of U
      assertThat(DecisionRisk.guardFor(confidence)).isCloseTo(r, within(SIX_DECIMALS));
    }
  }

  @Nested
  class Refuses {
    @Test
    void limitsThatAreNoInterval() {
      assertThatThrownBy(() -> new DecisionRisk(1, 1)).hasMessageContaining("below its upper");
      assertThatThrownBy(() -> new DecisionRisk(-NONE, NONE)).hasMessageContaining("tolerance");
      assertThatThrownBy(() -> new DecisionRisk(Double.NaN, 1)).hasMessageContaining("NaN");
    }

    @Test
    void numbersThatCannotBe() {
      DecisionRisk tolerance = new DecisionRisk(-1, 1);

      assertThatThrownBy(() -> tolerance.conformance(Double.NaN, 1)).hasMessageContaining("finite");
      assertThatThrownBy(() -> tolerance.conformance(0, -1)).hasMessageContaining("0 or more");
      assertThatThrownBy(() -> tolerance.global(0, Double.NaN, 1, 0)).hasMessageContaining("NaN");
      assertThatThrownBy(() -> tolerance.global(0, 1, 1, NONE)).hasMessageContaining("guard band");
      assertThatThrownBy(() -> DecisionRisk.guardFor(1)).hasMessageContaining("below 1");
    }
  }
}
