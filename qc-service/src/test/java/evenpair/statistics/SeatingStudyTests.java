package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Real measurements: six over-ear headphones taken off and put on again ten times (source:
 * SOURCE.md beside the data), analysed as parts × passes. One appraiser only, so one-way: it tells
 * repeatability and the spread between specimens, not reproducibility.
 */
class SeatingStudyTests {
  private static final List<String[]> ROWS = rows();
  private static final List<String> SPECIMENS = List.of("a1", "a2", "a3", "b1", "b2", "b3");
  private static final int FIRST_BAND = 3;
  private static final int BANDS = 23;

  /** Third-octave bands at 100, 200, 500 Hz, 1, 2, 4, 8, 10 kHz among those from 100 Hz up. */
  private static final int[] EXAMPLE_BANDS = {0, 3, 7, 10, 13, 16, 19, 20};

  /** Expected values are printed to four decimals, the data too: 0.0001 covers both roundings. */
  private static final double FOUR_DECIMALS = 1e-4;

  @Nested
  class RepeatabilityOfAllSpecimens {
    /** Calculated with NumPy 2.4: √ of the mean over specimens of var(ddof=1). */
    @Test
    void ofTheLeftLevel() {
      assertThat(sdWithin("L"))
          .containsExactly(
              new double[] {
                0.9720, 0.8911, 0.8171, 0.7384, 0.7070, 0.7033, 0.6736, 0.6663, 0.4080, 0.3656,
                0.4064, 0.4269, 0.4274, 0.5177, 0.6015, 0.5749, 0.3198, 0.3664, 0.8793, 0.5683,
                0.9090, 1.0781, 1.2223
              },
              within(FOUR_DECIMALS));
    }

    @Test
    void ofTheRightLevel() {
      assertThat(sdWithin("R"))
          .containsExactly(
              new double[] {
                0.8627, 0.7710, 0.7113, 0.6443, 0.6354, 0.6797, 0.6827, 0.6551, 0.4933, 0.3557,
                0.3981, 0.4241, 0.4771, 0.6323, 0.7847, 0.7561, 0.3769, 0.7898, 1.0359, 0.9845,
                0.6793, 1.8207, 1.2715
              },
              within(FOUR_DECIMALS));
    }

    @Test
    void ofLeftMinusRight() {
      double[] found =
          IntStream.range(0, BANDS)
              .mapToDouble(band -> OneWayAnova.of(difference(band)).sdWithin())
              .toArray();

      assertThat(found)
          .containsExactly(
              new double[] {
                0.9331, 0.8530, 0.7893, 0.7217, 0.6631, 0.6757, 0.6543, 0.6550, 0.4746, 0.4070,
                0.4431, 0.4522, 0.5211, 0.6808, 0.8548, 0.7905, 0.4402, 0.9057, 1.4197, 1.0218,
                1.0661, 2.0095, 1.4700
              },
              within(FOUR_DECIMALS));
    }
  }

  /** Calculated with NumPy 2.4: (10·var(means) − within)/10, its root. */
  @Test
  void tellsSpecimensApartByFarMoreThanSeatings() {
    double[] found =
        IntStream.range(0, BANDS)
            .mapToDouble(band -> Math.sqrt(OneWayAnova.of(groups("L", band)).varianceBetween()))
            .toArray();

    assertThat(found)
        .containsExactly(
            new double[] {
              4.2640, 4.4705, 4.8309, 5.2923, 5.9418, 6.5545, 7.2132, 7.8884, 5.8500, 2.1335,
              1.5328, 1.1279, 0.9768, 3.7617, 7.8662, 9.1006, 9.0091, 2.5856, 2.2706, 1.2403,
              3.4681, 9.4967, 9.2818
            },
            within(FOUR_DECIMALS));
  }

  /** Values at eight bands, calculated with NumPy and rounded to two decimals. */
  @Nested
  class SingleSpecimens {
    @Test
    void aTightFitRepeatsWithinAQuarterDecibelBelowTenKilohertz() {
      assertThat(sdOf("b3"))
          .containsExactly(new double[] {.25, .12, .14, .13, .14, .10, .26, .55}, within(0.00501));
    }

    @Test
    void aLooseFitSpreadsByMoreThanOneDecibelAtLowFrequency() {
      assertThat(sdOf("a2"))
          .containsExactly(
              new double[] {1.42, 1.14, 1.18, .61, .86, .28, .88, .74}, within(0.00501));
    }

    @Test
    void haveTheirOwnLeftRightDifference() {
      assertThat(meanDifference("a1"))
          .containsExactly(
              new double[] {-.25, -1.77, -1.76, -.46, .01, 2.87, .42, .42}, within(0.00501));
      assertThat(meanDifference("b3"))
          .containsExactly(
              new double[] {-1.49, -1.66, -1.66, -2.20, -1.21, -1.35, -1.70, .84}, within(0.00501));
    }
  }

  private static double[] sdWithin(String ear) {
    return IntStream.range(0, BANDS)
        .mapToDouble(band -> OneWayAnova.of(groups(ear, band)).sdWithin())
        .toArray();
  }

  private static double[] sdOf(String specimen) {
    return Arrays.stream(EXAMPLE_BANDS)
        .mapToDouble(band -> Description.of(passes(specimen, "L", band)).sd())
        .toArray();
  }

  private static double[] meanDifference(String specimen) {
    return Arrays.stream(EXAMPLE_BANDS)
        .mapToDouble(band -> Description.of(difference(band)[SPECIMENS.indexOf(specimen)]).mean())
        .toArray();
  }

  private static double[][] groups(String ear, int band) {
    return SPECIMENS.stream().map(specimen -> passes(specimen, ear, band)).toArray(double[][]::new);
  }

  private static double[][] difference(int band) {
    double[][] left = groups("L", band);
    double[][] right = groups("R", band);
    for (int s = 0; s < left.length; s++) {
      for (int pass = 0; pass < left[s].length; pass++) {
        left[s][pass] -= right[s][pass];
      }
    }
    return left;
  }

  private static double[] passes(String specimen, String ear, int band) {
    double[] passes =
        ROWS.stream()
            .filter(row -> row[0].equals(specimen) && row[2].equals(ear))
            .mapToDouble(row -> Double.parseDouble(row[FIRST_BAND + band]))
            .toArray();
    assertThat(passes).hasSize(10);
    return passes;
  }

  private static List<String[]> rows() {
    try (InputStream in =
        SeatingStudyTests.class.getResourceAsStream(
            "/statistics/seating-study/third-octave-levels.csv")) {
      String text = new String(in.readAllBytes(), StandardCharsets.US_ASCII);
      return text.lines().skip(1).map(line -> line.split(",")).toList();
    } catch (IOException e) {
      throw new java.io.UncheckedIOException(e);
    }
  }
}
