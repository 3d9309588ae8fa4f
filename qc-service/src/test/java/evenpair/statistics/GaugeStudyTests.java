package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.GaugeResult.Component;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class GaugeStudyTests {
  private static final GaugeStudy TEN_BY_THREE_BY_THREE = new GaugeStudy(10, 3, 3);

  /**
   * The example of AIAG, Measurement Systems Analysis, 4th edition: 10 parts (rows) by appraisers
   * A, B, C, three trials each. Copied from two public test files that agree on all numbers.
   */
  private static final double[] PUBLISHED = {
    0.29, 0.41, 0.64, 0.08, 0.25, 0.07, 0.04, -0.11, -0.15, //
    -0.56, -0.68, -0.58, -0.47, -1.22, -0.68, -1.38, -1.13, -0.96, //
    1.34, 1.17, 1.27, 1.19, 0.94, 1.34, 0.88, 1.09, 0.67, //
    0.47, 0.50, 0.64, 0.01, 1.03, 0.20, 0.14, 0.20, 0.11, //
    -0.80, -0.92, -0.84, -0.56, -1.20, -1.28, -1.46, -1.07, -1.45, //
    0.02, -0.11, -0.21, -0.20, 0.22, 0.06, -0.29, -0.67, -0.49, //
    0.59, 0.75, 0.66, 0.47, 0.55, 0.83, 0.02, 0.01, 0.21, //
    -0.31, -0.20, -0.17, -0.63, 0.08, -0.34, -0.46, -0.56, -0.49, //
    2.26, 1.99, 2.01, 1.80, 2.12, 2.19, 1.77, 1.45, 1.87, //
    -1.36, -1.25, -1.31, -1.68, -1.62, -1.50, -1.49, -1.77, -2.16
  };

  /** Printed to six decimals; worked out values agree to the last one. */
  private static final double SIX_DECIMALS = 0.6e-6;

  @Nested
  class ThePublishedExample {
    /**
     * A third public copy of these numbers is wrong; the sums tell. Two decimals each, so both sums
     * are exact to four.
     */
    @Test
    void isCopiedWithoutAMistake() {
      assertThat(PUBLISHED).hasSize(90);
      assertThat(Arrays.stream(PUBLISHED).sum()).isCloseTo(0.1300, within(1e-10));
      assertThat(Arrays.stream(PUBLISHED).map(x -> x * x).sum()).isCloseTo(94.6473, within(1e-10));
    }

    /**
     * Sums of squares calculated with an independent program, printed to six decimals; F and p to
     * three and four.
     */
    @Test
    void hasThisTable() {
      GaugeTable table = TEN_BY_THREE_BY_THREE.analyse(PUBLISHED).table();

      assertThat(table.part().squares()).isCloseTo(88.361934, within(SIX_DECIMALS));
      assertThat(table.appraiser().squares()).isCloseTo(3.167262, within(SIX_DECIMALS));
      assertThat(table.interaction().squares()).isCloseTo(0.358982, within(SIX_DECIMALS));
      assertThat(table.repeat().squares()).isCloseTo(2.758933, within(SIX_DECIMALS));
      assertThat(table.totalSquares()).isCloseTo(94.647112, within(SIX_DECIMALS));
      assertThat(table.part().freedom()).isEqualTo(9);
      assertThat(table.appraiser().freedom()).isEqualTo(2);
      assertThat(table.interaction().freedom()).isEqualTo(18);
      assertThat(table.repeat().freedom()).isEqualTo(60);
      assertThat(table.interactionF()).isCloseTo(0.434, within(0.0005));
      assertThat(table.interactionP()).isCloseTo(0.9741, within(0.00005));
      assertThat(table.pooled().squares()).isCloseTo(3.117916, within(SIX_DECIMALS));
      assertThat(table.pooled().freedom()).isEqualTo(78);
      assertThat(table.part().mean() / table.pooled().mean()).isCloseTo(245.614, within(0.0005));
      assertThat(table.appraiser().mean() / table.pooled().mean())
          .isCloseTo(39.617, within(0.0005));
    }

    /**
     * Published (interaction pooled): six decimals; the share of GRR printed as 27.9 %,
     * contributions with one decimal.
     */
    @Test
    void givesThePublishedResultPooled() {
      GaugeResult result = TEN_BY_THREE_BY_THREE.analyse(PUBLISHED);

      assertThat(result.pooled()).isTrue();
      assertThat(result.ev()).isCloseTo(0.199933, within(SIX_DECIMALS));
      assertThat(result.av()).isCloseTo(0.226838, within(SIX_DECIMALS));
      // calculated; published as .302373, one and a half units of the last decimal off
      assertThat(result.grr()).isCloseTo(0.302372, within(SIX_DECIMALS));
      assertThat(result.pv()).isCloseTo(1.042327, within(SIX_DECIMALS));
      assertThat(result.tv()).isCloseTo(1.085300, within(SIX_DECIMALS));
      assertThat(result.grrPercent()).isCloseTo(27.86, within(0.005));
      assertThat(result.contributionPercent(result.repeatVariance())).isCloseTo(3.4, within(0.05));
      assertThat(result.contributionPercent(result.appraiserVariance()))
          .isCloseTo(4.4, within(0.05));
      assertThat(result.contributionPercent(result.grrVariance())).isCloseTo(7.8, within(0.05));
      assertThat(result.contributionPercent(result.partVariance())).isCloseTo(92.2, within(0.05));
      assertThat(result.ndc(GaugeResult.USUAL_NDC_FACTOR)).isCloseTo(4.8605, within(0.00005));
      assertThat(result.ndc(Math.sqrt(2))).isCloseTo(4.8750, within(0.00005));
      assertThat(result.takenForZero()).isEmpty();
    }

    /** Never pooled: the interaction's component comes out below 0. */
    @Test
    void givesThePublishedResultUnpooled() {
      GaugeResult result = TEN_BY_THREE_BY_THREE.analyse(PUBLISHED, 1);

      assertThat(result.pooled()).isFalse();
      assertThat(result.ev()).isCloseTo(0.214435, within(SIX_DECIMALS));
      assertThat(result.av()).isCloseTo(0.228304, within(SIX_DECIMALS));
      assertThat(result.grr()).isCloseTo(0.313217, within(SIX_DECIMALS));
      assertThat(result.pv()).isCloseTo(1.043395, within(SIX_DECIMALS));
      assertThat(result.tv()).isCloseTo(1.089393, within(SIX_DECIMALS));
      assertThat(result.grrPercent()).isCloseTo(28.75, within(0.005));
      assertThat(result.ndc(GaugeResult.USUAL_NDC_FACTOR)).isCloseTo(4.697, within(0.0005));
      assertThat(result.contributionPercent(result.grrVariance())).isCloseTo(8.267, within(0.0005));
      assertThat(result.contributionPercent(result.partVariance()))
          .isCloseTo(91.733, within(0.0005));
      assertThat(result.interactionVariance()).isZero();
      assertThat(result.takenForZero()).containsExactly(Component.INTERACTION);
    }
  }

  @Nested
  class Components {
    /**
     * Made with sd 3 between parts, 1 between appraisers, 0.7 interaction, 0.5 repeat. With 60 × 40
     * × 4 values the standard error of a variance component is √(2/df) of it, of the appraisers'
     * (39 df) 23 %, the parts' (59 df) 18 %, the interaction's (2301 df) and repeat's (7200 df)
     * below 4 %; three of them are allowed.
     */
    @Test
    void areFoundAgainInSimulatedMeasurements() {
      Random random = new Random(11);
      GaugeStudy study = new GaugeStudy(60, 40, 4);
      double[] table = new double[study.size()];
      double[] appraiser = random.doubles(40).map(u -> random.nextGaussian()).toArray();
      for (int p = 0; p < 60; p++) {
        double part = 3 * random.nextGaussian();
        for (int a = 0; a < 40; a++) {
          double both = 0.7 * random.nextGaussian();
          for (int t = 0; t < 4; t++) {
            table[study.index(p, a, t)] =
                90 + part + appraiser[a] + both + 0.5 * random.nextGaussian();
          }
        }
      }

      GaugeResult result = study.analyse(table);

      assertThat(result.pooled()).isFalse();
      assertThat(result.partVariance()).isBetween(9 * (1 - 0.54), 9 * (1 + 0.54));
      assertThat(result.appraiserVariance()).isBetween(1 - 0.69, 1 + 0.69);
      assertThat(result.interactionVariance()).isBetween(0.49 * 0.88, 0.49 * 1.12);
      assertThat(result.repeatVariance()).isBetween(0.25 * 0.95, 0.25 * 1.05);
      assertThat(result.reproducibility())
          .isEqualTo(Math.sqrt(result.appraiserVariance() + result.interactionVariance()));
    }

    @Test
    void belowZeroAreTakenForZeroAndNamed() {
      // by hand: part means both 0.5, appraiser means both 0.5; all spread is repeat and
      // interaction
      GaugeResult result = new GaugeStudy(2, 2, 2).analyse(new double[] {0, 1, 1, 0, 1, 0, 0, 1});

      assertThat(result.partVariance()).isZero();
      assertThat(result.appraiserVariance()).isZero();
      assertThat(result.takenForZero()).contains(Component.PART, Component.APPRAISER);
      assertThat(result.ndc(GaugeResult.USUAL_NDC_FACTOR)).isZero();
    }

    @Test
    void areAllZeroIfNothingSpreads() {
      GaugeResult result = new GaugeStudy(2, 2, 2).analyse(new double[] {7, 7, 7, 7, 7, 7, 7, 7});

      assertThat(result.grrVariance()).isZero();
      assertThat(result.grrPercent()).isNaN();
    }
  }

  /**
   * A constant and a factor change the unit, not what the study says; rounding at 1e6 takes 1e-10
   * of the values.
   */
  @Test
  void doesNotDependOnUnitOrOrigin() {
    double[] moved = Arrays.stream(PUBLISHED).map(x -> 1e6 + 10 * x).toArray();

    GaugeResult result = TEN_BY_THREE_BY_THREE.analyse(moved);

    assertThat(result.ev()).isCloseTo(1.99933, within(1e-5));
    assertThat(result.grrPercent()).isCloseTo(27.86, within(0.005));
  }

  @Test
  void refusesATableOfAnotherSizeOrWithoutNumbers() {
    double[] broken = PUBLISHED.clone();
    broken[44] = Double.NaN;
    assertThatIllegalArgumentException()
        .isThrownBy(() -> TEN_BY_THREE_BY_THREE.analyse(new double[89]));
    assertThatIllegalArgumentException().isThrownBy(() -> TEN_BY_THREE_BY_THREE.analyse(broken));
    assertThatIllegalArgumentException().isThrownBy(() -> new GaugeStudy(10, 1, 3));
  }
}
