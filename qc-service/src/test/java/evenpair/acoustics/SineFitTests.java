package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.apache.commons.math3.analysis.MultivariateFunction;
import org.apache.commons.math3.fitting.leastsquares.LeastSquaresBuilder;
import org.apache.commons.math3.fitting.leastsquares.LevenbergMarquardtOptimizer;
import org.apache.commons.math3.linear.ArrayRealVector;
import org.apache.commons.math3.linear.MatrixUtils;
import org.apache.commons.math3.linear.RealMatrix;
import org.apache.commons.math3.linear.RealVector;
import org.apache.commons.math3.util.Pair;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class SineFitTests {
  private static final double RATE = 48_000;

  @Nested
  class ExactTones {
    /**
     * Float samples are rounded by up to half a step of 2⁻²⁴ relative to 1, white in effect: r.m.s.
     * about 2e-8 at an amplitude near 0.5. Over 48 000 samples the amplitude's share of it is
     * 2e-8·√(2/48000) ≈ 1e-10; 2e-9 leaves room for rounding that is not white on exact periods.
     * Frequency: √6·σ/(π·A·T·√N)·… ≈ 1e-10 Hz; 1e-7 Hz asked.
     */
    @ParameterizedTest
    @CsvSource({
      "1000, 0.5, 0.3, 0",
      "997.3, 0.5, -2.9, 0.01",
      "250.123, 0.25, 1.5, -0.05",
      "15999.7, 0.7, 3.1, 0.2",
      "20.4, 0.1, 0, 0"
    })
    void areFoundWithAllFourParameters(double hz, double amplitude, double phase, double offset) {
      SineFit fit = SineFit.of(tone(48_000, hz, amplitude, phase, offset)).orElseThrow();
      assertThat(fit.amplitude()).isCloseTo(amplitude, within(2e-9));
      assertThat(fit.frequencyHz()).isCloseTo(hz, within(1e-7));
      assertThat(fit.phase()).isCloseTo(phase, within(1e-7));
      assertThat(fit.offset()).isCloseTo(offset, within(2e-9));
      assertThat(fit.residualRms()).isLessThan(5e-8);
    }

    /**
     * Half a bin off in the record's own spectrum (1/T = 1 Hz) is the worst place for a peak
     * search.
     */
    @ParameterizedTest
    @ValueSource(doubles = {1000.0, 1000.1, 1000.25, 1000.5, 1000.75, 1000.9})
    void lieAnywhereBetweenTwoBins(double hz) {
      SineFit fit = SineFit.of(tone(48_000, hz, 0.4, 1, 0)).orElseThrow();
      assertThat(fit.frequencyHz()).isCloseTo(hz, within(1e-7));
      assertThat(fit.amplitude()).isCloseTo(0.4, within(2e-9));
    }

    /**
     * A tone at −100 dB re full scale; the float's steps shrink with it, so that the relative
     * bounds stay.
     */
    @Test
    void mayBeVeryWeak() {
      SineFit fit = SineFit.of(tone(48_000, 1000.3, 1e-5, 0.5, 0)).orElseThrow();
      assertThat(fit.amplitude()).isCloseTo(1e-5, within(1e-13));
    }

    @Test
    void mayStartFromAGivenFrequency() {
      // 0.3 Hz off over 1 s is 0.3 periods, inside the half period that the first guess may be
      // wrong by.
      SineFit fit = SineFit.of(tone(48_000, 1000.3, 0.5, 0, 0), 1000).orElseThrow();
      assertThat(fit.frequencyHz()).isCloseTo(1000.3, within(1e-7));
    }

    /**
     * Three periods only: the peak of the spectrum is a poor guess then, and the iteration must
     * mend it.
     */
    @Test
    void mayLastAFewPeriodsOnly() {
      SineFit fit = SineFit.of(tone(144, 1010, 0.5, 0.7, 0.1)).orElseThrow();
      assertThat(fit.frequencyHz()).isCloseTo(1010, within(1e-3));
      assertThat(fit.amplitude()).isCloseTo(0.5, within(1e-6));
    }
  }

  @Nested
  class ImpureTones {
    /**
     * White Gaussian noise of σ = 0.01 on A = 0.5 over N = 48 000: the Cramér–Rao bounds are sd(A)
     * = σ·√(2/N) = 6.5e-5 and sd(f) = √6·σ/(π·A·T·√N) = 7.1e-5 Hz (Kay, Fundamentals of Statistical
     * Signal Processing, from memory). Five of each asked.
     */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void areFoundWithinTheNoiseBound(long seed) {
      Random random = new Random(seed);
      Samples clean = tone(48_000, 1003.7, 0.5, 0.2, 0);
      for (int n = 0; n < clean.values().length; n++) {
        clean.values()[n] += (float) (0.01 * random.nextGaussian());
      }
      SineFit fit = SineFit.of(clean).orElseThrow();
      assertThat(fit.amplitude()).isCloseTo(0.5, within(5 * 6.5e-5));
      assertThat(fit.frequencyHz()).isCloseTo(1003.7, within(5 * 7.1e-5));
      // The r.m.s. of 48 000 Gaussian values scatters by 1/√(2N) = 0.32 %.
      assertThat(fit.residualRms()).isCloseTo(0.01, within(0.01 * 5 * 0.0032));
    }

    /**
     * Whole periods of all harmonics in the record: they are orthogonal to the sine, and the ratio
     * is √(0.02² + 0.01²) exactly.
     */
    @Test
    void tellDistortionAndNoiseAsARatioToTheSine() {
      Samples tone = tone(48_000, 1000, 0.5, 0, 0);
      add(tone, tone(48_000, 2000, 0.01, 0.4, 0));
      add(tone, tone(48_000, 3000, 0.005, 0.9, 0));
      assertThat(SineFit.of(tone).orElseThrow().distortionAndNoise())
          .isCloseTo(Math.hypot(0.02, 0.01), within(1e-6));
    }
  }

  /**
   * A second route that shares nothing with the fit under test: Levenberg–Marquardt of Commons Math
   * on the four parameters as they are written (A, f, φ, C), with derivatives by central
   * differences. Both minimise the same sum of squares, so that they must meet; 1e-6 is what the
   * differences' step leaves.
   */
  @ParameterizedTest
  @ValueSource(longs = {11, 12, 13})
  void meetsAGeneralLeastSquaresFit(long seed) {
    Random random = new Random(seed);
    Samples tone = tone(2_000, 980 + 40 * random.nextDouble(), 0.3, 2 * random.nextDouble(), 0.02);
    for (int n = 0; n < tone.values().length; n++) {
      tone.values()[n] += (float) (0.02 * random.nextGaussian());
    }
    SineFit fit = SineFit.of(tone).orElseThrow();
    double[] other =
        generalFit(tone, new double[] {0.28, fit.frequencyHz() + 1, fit.phase() - 0.1, 0});
    assertThat(fit.amplitude()).isCloseTo(other[0], within(1e-6));
    assertThat(fit.frequencyHz()).isCloseTo(other[1], within(1e-4));
    assertThat(fit.phase()).isCloseTo(other[2], within(1e-5));
    assertThat(fit.offset()).isCloseTo(other[3], within(1e-6));
  }

  @Nested
  class WithoutATone {
    @Test
    void silenceHasNoFit() {
      assertThat(SineFit.of(new Samples(new float[48_000], RATE))).isEmpty();
    }

    @Test
    void aConstantHasNoFit() {
      assertThat(SineFit.of(tone(48_000, 1000, 0, 0, 0.5))).isEmpty();
    }

    @Test
    void sevenSamplesHaveNoFit() {
      assertThat(SineFit.of(tone(7, 12_000, 0.5, 0, 0))).isEmpty();
    }

    /**
     * A fit may settle on some ripple of the noise, but leaves nearly all of it over: ratio far
     * above 1.
     */
    @ParameterizedTest
    @ValueSource(longs = {21, 22, 23})
    void noiseIsNeverTakenForATone(long seed) {
      Random random = new Random(seed);
      Samples noise = new Samples(new float[48_000], RATE);
      for (int n = 0; n < noise.values().length; n++) {
        noise.values()[n] = (float) (0.1 * random.nextGaussian());
      }
      SineFit.of(noise).ifPresent(fit -> assertThat(fit.distortionAndNoise()).isGreaterThan(10));
    }
  }

  private static double[] generalFit(Samples samples, double[] start) {
    double[] observed = new double[samples.values().length];
    for (int n = 0; n < observed.length; n++) {
      observed[n] = samples.values()[n];
    }
    return new LevenbergMarquardtOptimizer()
        .optimize(
            new LeastSquaresBuilder()
                .start(start)
                .target(observed)
                .model(parameters -> modelAndDerivatives(parameters.toArray(), observed.length))
                .maxEvaluations(500)
                .maxIterations(500)
                .build())
        .getPoint()
        .toArray();
  }

  private static Pair<RealVector, RealMatrix> modelAndDerivatives(double[] p, int count) {
    double[] steps = {1e-6, 1e-4, 1e-6, 1e-6};
    RealMatrix derivatives = MatrixUtils.createRealMatrix(count, p.length);
    double[] values = new double[count];
    for (int n = 0; n < count; n++) {
      double seconds = n / RATE;
      MultivariateFunction sine = q -> q[0] * Math.cos(2 * Math.PI * q[1] * seconds + q[2]) + q[3];
      values[n] = sine.value(p);
      for (int i = 0; i < p.length; i++) {
        double[] above = p.clone();
        double[] below = p.clone();
        above[i] += steps[i];
        below[i] -= steps[i];
        derivatives.setEntry(n, i, (sine.value(above) - sine.value(below)) / (2 * steps[i]));
      }
    }
    return new Pair<>(new ArrayRealVector(values, false), derivatives);
  }

  private static Samples tone(int count, double hz, double amplitude, double phase, double offset) {
    float[] values = new float[count];
    for (int n = 0; n < count; n++) {
      values[n] = (float) (amplitude * Math.cos(2 * Math.PI * hz * n / RATE + phase) + offset);
    }
    return new Samples(values, RATE);
  }

  private static void add(Samples to, Samples other) {
    for (int n = 0; n < to.values().length; n++) {
      to.values()[n] += other.values()[n];
    }
  }
}
