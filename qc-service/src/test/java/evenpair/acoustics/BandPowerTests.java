package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BandPowerTests {
  private static final double BIN_HZ = 0.8;
  private static final int BINS = 400;

  @ParameterizedTest
  @CsvSource({"0, 319.2", "0, 0.3", "100.1, 100.3", "100.1, 101.2", "33.3, 250", "318, 319.2"})
  void aStraightLineHasTheMeanOfItsEnds(double fromHz, double toHz) {
    double[] line = IntStream.range(0, BINS).mapToDouble(k -> 3 + 2 * k * BIN_HZ).toArray();
    double mean = new BandPower(line, BIN_HZ).mean(fromHz, toHz);
    assertThat(mean).isCloseTo(3 + fromHz + toHz, within(1e-9));
  }

  @Test
  void aParabolaIsIntegratedExactlyWithinOneBinAndOverMany() {
    double[] square = IntStream.range(0, BINS).mapToDouble(k -> Math.pow(k * BIN_HZ, 2)).toArray();
    BandPower power = new BandPower(square, BIN_HZ);
    for (double[] band : new double[][] {{80.1, 80.6}, {80.1, 81.9}, {1.7, 300}}) {
      double exact = (Math.pow(band[1], 3) - Math.pow(band[0], 3)) / 3 / (band[1] - band[0]);
      // the bend follows a parabola exactly over whole bins; inside one, its cubic share stays
      double inside = Math.pow(BIN_HZ, 3) / 8 / (band[1] - band[0]);
      assertThat(power.mean(band[0], band[1])).isCloseTo(exact, within(inside));
    }
    // over whole bins nothing is left but rounding
    assertThat(power.mean(8, 160)).isCloseTo((160 * 160 * 160 - 512) / 3.0 / 152, within(1e-8));
  }

  @Test
  void bandsSideBySideGiveTheirSum() {
    double[] rough = new Random(1).doubles(BINS, 10, 11).toArray();
    BandPower power = new BandPower(rough, BIN_HZ);
    Random random = new Random(2);
    for (int k = 0; k < 500; k++) {
      double[] edges = random.doubles(3, 0, (BINS - 1) * BIN_HZ).sorted().toArray();
      double parts =
          power.mean(edges[0], edges[1]) * (edges[1] - edges[0])
              + power.mean(edges[1], edges[2]) * (edges[2] - edges[1]);
      double whole = power.mean(edges[0], edges[2]) * (edges[2] - edges[0]);
      assertThat(parts).isCloseTo(whole, within(1e-9));
    }
  }
}
