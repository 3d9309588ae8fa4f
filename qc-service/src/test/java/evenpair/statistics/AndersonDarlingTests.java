package evenpair.statistics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.statistics.Finding.Lack;
import evenpair.statistics.Finding.NotEnough;
import java.util.stream.DoubleStream;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Values of R's package nortest, recalculated; half a unit of the last digit printed. */
class AndersonDarlingTests {
  /** Heat flow meter, NIST. */
  @Test
  void leavesNormalDataAlone() {
    AndersonDarling found = AndersonDarling.of(Measured.handbook("ZARR13")).told().orElseThrow();

    assertThat(found.n()).isEqualTo(195);
    assertThat(found.aSquared()).isCloseTo(0.126479, within(0.5e-6));
    assertThat(found.p()).isCloseTo(0.98502, within(0.5e-5));
  }

  /** Microwave radiation, e-Handbook 6.5.2. */
  @Test
  void refusesSkewedData() {
    double[] radiation = Measured.handbook("MONITOR-6_5_2");
    AndersonDarling found = AndersonDarling.of(radiation).told().orElseThrow();

    assertThat(found.n()).isEqualTo(42);
    assertThat(found.aSquared()).isCloseTo(2.1014, within(0.5e-4));
    assertThat(found.p()).isCloseTo(1.9455e-5, within(0.5e-9));
  }

  /** The same after a Box–Cox transformation with λ = 0.27594. */
  @Test
  void acceptsItTransformed() {
    double lambda = 0.27594;
    double[] transformed =
        DoubleStream.of(Measured.handbook("MONITOR-6_5_2"))
            .map(x -> (Math.pow(x, lambda) - 1) / lambda)
            .toArray();
    AndersonDarling found = AndersonDarling.of(transformed).told().orElseThrow();

    assertThat(found.aSquared()).isCloseTo(0.568194, within(0.5e-6));
    assertThat(found.p()).isCloseTo(0.1323, within(0.5e-4));
  }

  /** {@code women$height} of R's datasets: 58 … 72 in. */
  @Test
  void takesASmallSample() {
    AndersonDarling found =
        AndersonDarling.of(IntStream.rangeClosed(58, 72).asDoubleStream().toArray())
            .told()
            .orElseThrow();

    assertThat(found.aSquared()).isCloseTo(0.175862, within(0.5e-6));
    assertThat(found.p()).isCloseTo(0.90527, within(0.5e-5));
  }

  /** A value 44 standard deviations out: Φ has left the range of double there. */
  @Test
  void staysFiniteFarOut() {
    double[] values = new double[2000];
    for (int i = 0; i < values.length; i++) {
      values[i] = i % 2 == 0 ? 1e-6 : -1e-6;
    }
    values[7] = 1;
    AndersonDarling found = AndersonDarling.of(values).told().orElseThrow();

    assertThat(found.aSquared()).isFinite().isGreaterThan(10);
    assertThat(found.p()).isBetween(0.0, 1e-23);
  }

  @Test
  void saysWhatItNeeds() {
    assertThat(AndersonDarling.of(1, 2, 3, 4, 5, 6, 7))
        .isEqualTo(new NotEnough<>(Lack.UNITS, 7, 8));
    assertThat(AndersonDarling.of(new double[8])).isEqualTo(new NotEnough<>(Lack.SPREAD, 1, 2));
  }
}
