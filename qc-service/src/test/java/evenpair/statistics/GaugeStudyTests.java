package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Data: the worked example of the measurement systems analysis manual of the automotive industry,
 * 4th edition: 10 parts, 3 appraisers, 3 trials, as two unrelated public test files have it. The
 * sums of squares were computed apart (SciPy); the published results with the interaction pooled
 * are quoted in one of those files. Tolerance: half a unit of the last decimal given.
 */
class GaugeStudyTests {
  private static final double SIX = 0.5e-6;

  /** Rows are parts; columns A1 A2 A3 B1 B2 B3 C1 C2 C3. */
  private static final double[][] EXAMPLE = {
    {0.29, 0.41, 0.64, 0.08, 0.25, 0.07, 0.04, -0.11, -0.15},
    {-0.56, -0.68, -0.58, -0.47, -1.22, -0.68, -1.38, -1.13, -0.96},
    {1.34, 1.17, 1.27, 1.19, 0.94, 1.34, 0.88, 1.09, 0.67},
    {0.47, 0.50, 0.64, 0.01, 1.03, 0.20, 0.14, 0.20, 0.11},
    {-0.80, -0.92, -0.84, -0.56, -1.20, -1.28, -1.46, -1.07, -1.45},
    {0.02, -0.11, -0.21, -0.20, 0.22, 0.06, -0.29, -0.67, -0.49},
    {0.59, 0.75, 0.66, 0.47, 0.55, 0.83, 0.02, 0.01, 0.21},
    {-0.31, -0.20, -0.17, -0.63, 0.08, -0.34, -0.46, -0.56, -0.49},
    {2.26, 1.99, 2.01, 1.80, 2.12, 2.19, 1.77, 1.45, 1.87},
    {-1.36, -1.25, -1.31, -1.68, -1.62, -1.50, -1.49, -1.77, -2.16}
  };

  @Test
  void copiedTheExampleRight() {
    double sum = 0;
    double squares = 0;
    for (double[] part : EXAMPLE) {
      for (double value : part) {
        sum += value;
        squares += value * value;
      }
    }
    // checksums known to four decimals
    assertThat(sum).isCloseTo(0.1300, within(0.5e-4));
    assertThat(squares).isCloseTo(94.6473, within(0.5e-4));
  }

  @Nested
  class SumsOfSquares {
    private final GaugeStudy study = GaugeStudy.of(block(), 0.25);

    @Test
    void agreeWithAnIndependentComputation() {
      assertThat(study.parts().sumOfSquares()).isCloseTo(88.361934, within(SIX));
      assertThat(study.stations().sumOfSquares()).isCloseTo(3.167262, within(SIX));
      assertThat(study.interaction().sumOfSquares()).isCloseTo(0.358982, within(SIX));
      assertThat(study.repeats().sumOfSquares()).isCloseTo(2.758933, within(SIX));
      assertThat(study.parts().meanSquare()).isCloseTo(9.817993, within(SIX));
    }

    @Test
    void haveTheirDegreesOfFreedom() {
      assertThat(study.parts().degreesOfFreedom()).isEqualTo(9);
      assertThat(study.stations().degreesOfFreedom()).isEqualTo(2);
      assertThat(study.interaction().degreesOfFreedom()).isEqualTo(18);
      assertThat(study.repeats().degreesOfFreedom()).isEqualTo(60);
    }

    @Test
    void testTheInteraction() {
      assertThat(study.interactionP()).isCloseTo(0.9741, within(0.5e-4));
    }
  }

  @Nested
  class Components {
    @Test
    void agreeWithThePublishedOnesWhenTheInteractionIsPooled() {
      GaugeStudy study = GaugeStudy.of(block(), 0.25);

      assertThat(study.pooled()).isTrue();
      assertThat(study.repeatability()).isCloseTo(0.199933, within(SIX));
      assertThat(study.reproducibility()).isCloseTo(0.226838, within(SIX));
      // published as .302373; an independent computation gives .302372
      assertThat(study.gauge()).isCloseTo(0.302372, within(1e-6));
      assertThat(study.partToPart()).isCloseTo(1.042327, within(SIX));
      assertThat(study.total()).isCloseTo(1.085300, within(SIX));
    }

    @Test
    void agreeWithAnIndependentComputationWhenItIsNot() {
      GaugeStudy study = GaugeStudy.of(block(), 1);

      assertThat(study.pooled()).isFalse();
      assertThat(study.repeatability()).isCloseTo(0.214435, within(SIX));
      assertThat(study.reproducibility()).isCloseTo(0.228304, within(SIX));
      assertThat(study.gauge()).isCloseTo(0.313217, within(SIX));
      assertThat(study.partToPart()).isCloseTo(1.043395, within(SIX));
    }

    @Test
    void areZeroWhereNothingVaries() {
      GaugeStudy study = GaugeStudy.of(new double[][][] {{{1, 1}, {1, 1}}, {{2, 2}, {2, 2}}}, 0.25);

      assertThat(study.repeatability()).isZero();
      assertThat(study.reproducibility()).isZero();
      // by hand: MS_part = 2·2·(0.25 + 0.25)/1 = 2, over 4: variance 0.5
      assertThat(study.partToPart()).isCloseTo(Math.sqrt(0.5), within(1e-15));
    }
  }

  @Test
  void refusesABlockThatIsNotFull() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaugeStudy.of(new double[][][] {{{1, 2}, {1, 2}}, {{1, 2}, {1}}}, 0.25));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> GaugeStudy.of(new double[][][] {{{1, 2}, {1, 2}}}, 0.25));
    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                GaugeStudy.of(
                    new double[][][] {{{1, 2}, {1, 2}}, {{1, 2}, {1, Double.NaN}}}, 0.25));
  }

  private static double[][][] block() {
    double[][][] block = new double[10][3][3];
    for (int part = 0; part < 10; part++) {
      for (int column = 0; column < 9; column++) {
        block[part][column / 3][column % 3] = EXAMPLE[part][column];
      }
    }
    return block;
  }
}
