package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BiquadTests {
  private static final double FS = 48_000;
  private static final Biquad PEAK_1K = Biquad.peak(1000, 6, 1, FS);
  private static final Biquad PEAK_8K = Biquad.peak(8000, -12, 4, FS);
  private static final Biquad LOW_SHELF = Biquad.lowShelf(105, 5.5, 0.71, FS);
  private static final Biquad HIGH_SHELF = Biquad.highShelf(4000, -4, Math.sqrt(0.5), FS);

  /** Coefficients of the Audio EQ Cookbook's formulas computed in Python, 15 decimals. */
  @Nested
  class Coefficients {
    @Test
    void ofPeaksAreTheCookbooks() {
      expect(
          PEAK_1K,
          1.043953086990335,
          -1.895320723936596,
          0.867722284759857,
          -1.895320723936596,
          0.911675371750192);
      expect(
          PEAK_8K,
          0.866990757424733,
          -0.822372829473416,
          0.777754901522100,
          -0.822372829473416,
          0.644745658946832);
    }

    @Test
    void ofShelvesAreTheCookbooks() {
      expect(
          LOW_SHELF,
          1.003082188390442,
          -1.983414710483562,
          0.980589668949984,
          -1.983475026278898,
          0.983611541545090);
      expect(
          HIGH_SHELF,
          0.685605908803220,
          -0.822977087049764,
          0.300926951993951,
          -1.352162112142933,
          0.515717885890340);
    }

    private void expect(Biquad filter, double b0, double b1, double b2, double a1, double a2) {
      // the reference has 15 decimals
      assertThat(filter.b0()).isCloseTo(b0, within(1e-14));
      assertThat(filter.b1()).isCloseTo(b1, within(1e-14));
      assertThat(filter.b2()).isCloseTo(b2, within(1e-14));
      assertThat(filter.a1()).isCloseTo(a1, within(1e-14));
      assertThat(filter.a2()).isCloseTo(a2, within(1e-14));
    }
  }

  @Nested
  class Gains {
    /** By scipy.signal.freqz, six decimals. */
    @ParameterizedTest
    @CsvSource({
      "20, 0.002589, -0.000005, 5.493923, 0.000000",
      "100, 0.065187, -0.000130, 3.011001, -0.000001",
      "105, 0.071923, -0.000143, 2.750000, -0.000002",
      "500, 1.879381, -0.003275, 0.009391, -0.000923",
      "1000, 6.000000, -0.013367, 0.000210, -0.014774",
      "2000, 1.865991, -0.058132, -0.000080, -0.226848",
      "4000, 0.405312, -0.338729, -0.000027, -2.000000",
      "8000, 0.084432, -12.000000, -0.000006, -3.817168",
      "10000, 0.047602, -2.225830, -0.000004, -3.939396",
      "16000, 0.009302, -0.139784, -0.000001, -3.997629",
      "20000, 0.002002, -0.025348, 0.000000, -3.999890"
    })
    void agreeWithTheReference(double hz, double peak1k, double peak8k, double low, double high) {
      assertThat(PEAK_1K.gainDb(hz, FS)).isCloseTo(peak1k, within(6e-7));
      assertThat(PEAK_8K.gainDb(hz, FS)).isCloseTo(peak8k, within(6e-7));
      assertThat(LOW_SHELF.gainDb(hz, FS)).isCloseTo(low, within(6e-7));
      assertThat(HIGH_SHELF.gainDb(hz, FS)).isCloseTo(high, within(6e-7));
    }

    // exact properties stated by the cookbook; only rounding is left
    @ParameterizedTest
    @CsvSource({"44100", "48000", "96000"})
    void areExactAtTheDesignFrequency(double fs) {
      assertThat(Biquad.peak(3150, -13, 12, fs).gainDb(3150, fs)).isCloseTo(-13, within(1e-9));
      assertThat(Biquad.lowShelf(200, 7, 0.7, fs).gainDb(200, fs)).isCloseTo(3.5, within(1e-9));
      assertThat(Biquad.highShelf(5000, 7, 0.7, fs).gainDb(5000, fs)).isCloseTo(3.5, within(1e-9));
      assertThat(Biquad.lowPass(900, 1.7, fs).gainDb(900, fs))
          .isCloseTo(20 * Math.log10(1.7), within(1e-9));
      assertThat(Biquad.highPass(900, 1.7, fs).gainDb(900, fs))
          .isCloseTo(20 * Math.log10(1.7), within(1e-9));
      assertThat(Biquad.gain(-7).gainDb(900, fs)).isCloseTo(-7, within(1e-9));
    }

    @Test
    void ofPassesAreOneInTheirBandAndNothingFarOutside() {
      assertThat(Biquad.lowPass(900, 0.7, FS).gainDb(0.01, FS)).isCloseTo(0, within(1e-6));
      assertThat(Biquad.highPass(900, 0.7, FS).gainDb(23_999, FS)).isCloseTo(0, within(1e-6));
      // two poles: 40 dB a decade, four decades below the corner
      assertThat(Biquad.highPass(900, 0.7, FS).gainDb(0.09, FS)).isLessThan(-150);
    }

    @Test
    void aBoostAndAnEqualCutAreAStraightWire() {
      FilterChain both =
          FilterChain.of(FS, Biquad.peak(2000, 9, 3, FS), Biquad.peak(2000, -9, 3, FS));
      for (int i = 0; i < 241; i++) {
        assertThat(both.gainDb(Grid.hz(i))).isCloseTo(0, within(1e-9));
      }
    }
  }

  @Nested
  class Filtering {
    /** The response by the transform of the impulse response itself, summed term by term. */
    @ParameterizedTest
    @CsvSource({"50", "1000", "7000", "15000"})
    void doesWhatTheResponseSays(double hz) {
      FilterChain chain =
          FilterChain.of(FS, PEAK_1K, PEAK_8K, LOW_SHELF, HIGH_SHELF, Biquad.highPass(90, 0.7, FS));
      double[] impulse = new double[20_000];
      impulse[0] = 1;
      double[] h = chain.filter(impulse);
      double re = 0;
      double im = 0;
      for (int n = 0; n < h.length; n++) {
        re += h[n] * Math.cos(2 * Math.PI * hz * n / FS);
        im -= h[n] * Math.sin(2 * Math.PI * hz * n / FS);
      }
      // the slowest pole decays with e^(−400·t) and better: nothing is left after 0.4 s
      assertThat(re).isCloseTo(chain.response(hz).getReal(), within(1e-9));
      assertThat(im).isCloseTo(chain.response(hz).getImaginary(), within(1e-9));
    }

    @Test
    void bandMeansOfASlopeAreItsIntegral() {
      // far below its corner a second-order high-pass has |H|² = c·f⁴: the mean over the band is
      // c·(b⁵ − a⁵)/(5·(b − a))
      FilterChain chain = FilterChain.of(FS, Biquad.highPass(15_000, 0.7, FS));
      double a = Grid.lowerEdge(10);
      double b = Grid.upperEdge(10);
      double point = chain.gainDb(Grid.hz(10));
      double mean = (Math.pow(b, 5) - Math.pow(a, 5)) / (5 * (b - a)) / Math.pow(Grid.hz(10), 4);
      // the corner is 560 times higher: |H|²'s next term is below 1e-5 of it, and cancels in the
      // ratio
      assertThat(chain.powerMeanDb(10) - point).isCloseTo(10 * Math.log10(mean), within(1e-5));
    }

    @Test
    void refusesWhatIsNoFilter() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Biquad.peak(24_000, 3, 1, FS))
          .withMessageContaining("24000");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Biquad.peak(1000, 3, 0, FS))
          .withMessageContaining("Q");
      assertThatIllegalArgumentException()
          .isThrownBy(() -> Biquad.peak(1000, Double.NaN, 1, FS))
          .withMessageContaining("gain");
      assertThatIllegalArgumentException().isThrownBy(() -> new Biquad(1, 0, Double.NaN, 0, 0));
    }
  }
}
