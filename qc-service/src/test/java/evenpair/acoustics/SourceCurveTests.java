package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class SourceCurveTests {
  @Test
  void aCoarseSourceIsFollowedAlongLinesInLogFrequency() {
    // −6 dB an octave, by hand: 90 dB at 100 Hz is 90 − 20·lg(f/100)·(6/6.0206) … the line is exact
    // in log f
    Curve curve = new SourceCurve(new double[] {100, 400}, new double[] {90, 78}).toGrid();
    int at = Grid.nearest(200);
    assertThat(curve.at(at))
        .isCloseTo(90 - 12 * Math.log(Grid.hz(at) / 100) / Math.log(4), within(1e-9));
  }

  @Test
  void nothingIsExtrapolated() {
    Curve curve = new SourceCurve(new double[] {100, 400}, new double[] {90, 78}).toGrid();
    assertThat(curve.has(Grid.nearest(100))).isTrue();
    assertThat(curve.has(Grid.nearest(100) - 1)).isFalse();
    // 10^(208/80) = 398.1 Hz lies inside, the next point at 409.7 Hz does not
    assertThat(curve.has(Grid.nearest(400))).isTrue();
    assertThat(curve.has(Grid.nearest(400) + 1)).isFalse();
  }

  @Test
  void theGridItselfComesBackUnchanged() {
    double[] db = IntStream.range(0, 241).mapToDouble(i -> 90 + 5 * Math.sin(i * 1.7)).toArray();
    Curve curve = new SourceCurve(Grid.frequencies(), db).toGrid();
    for (int i = 0; i < 241; i++) {
      assertThat(curve.at(i)).isCloseTo(db[i], within(1e-9));
    }
  }

  @Test
  void frequenciesWrittenWithTwoDecimalsOrAsLabelsLoseNoEnd() {
    double[] rounded =
        IntStream.range(0, 241).mapToDouble(i -> Math.round(Grid.hz(i) * 100) / 100.0).toArray();
    double[] labels = IntStream.range(0, 241).mapToDouble(Grid::label).toArray();
    double[] flat = new double[241];
    assertThat(new SourceCurve(rounded, flat).toGrid().covers(new Band(20, 20_000))).isTrue();
    assertThat(new SourceCurve(labels, flat).toGrid().covers(new Band(20, 20_000))).isTrue();
  }

  @Test
  void aFineSourceIsAveragedInPowerInsideEachBand() {
    // two levels alternate at 1 Hz spacing: the trapezoid gives the mean of the two powers, up to
    // the band's ends
    double[] hz = IntStream.rangeClosed(10, 22_000).mapToDouble(f -> f).toArray();
    double[] db =
        IntStream.rangeClosed(10, 22_000).mapToDouble(f -> f % 2 == 0 ? 80 : 90).toArray();
    Curve curve = new SourceCurve(hz, db).toGrid();
    double expected = 10 * Math.log10((Math.pow(10, 8) + Math.pow(10, 9)) / 2);
    // a band at 5 kHz is 144 Hz wide: one half step too many of either level is 0.5/144 of the
    // power difference
    assertThat(curve.at(Grid.nearest(5000))).isCloseTo(expected, within(0.03));
  }

  @Test
  void aFineSmoothSourceAgreesWithTheAnalyticBandMean() {
    FilterChain chain = FilterChain.of(48_000, Biquad.peak(1000, 12, 20, 48_000));
    double[] hz = IntStream.rangeClosed(0, 40_000).mapToDouble(k -> 15 + k * 0.5).toArray();
    double[] db = IntStream.range(0, hz.length).mapToDouble(k -> chain.gainDb(hz[k])).toArray();
    Curve curve = new SourceCurve(hz, db).toGrid();
    for (int i = Grid.nearest(500); i < Grid.nearest(2000); i++) {
      // 28 steps a band at 1 kHz: the trapezoid's error is below 1/(12·28²) of the curvature
      assertThat(curve.at(i)).isCloseTo(chain.powerMeanDb(i), within(0.002));
    }
  }

  @Test
  void aDelaysPhaseStaysADelaysPhase() {
    double delay = 0.0003;
    double[] hz = IntStream.rangeClosed(1, 400).mapToDouble(k -> 50.0 * k + 0.01).toArray();
    double[] phase =
        IntStream.range(0, hz.length)
            .mapToDouble(k -> Math.IEEEremainder(-360 * hz[k] * delay, 360))
            .toArray();
    double[] grid = new SourceCurve(hz, new double[hz.length]).phaseToGrid(phase);
    for (int i = Grid.nearest(60); i < 240; i++) {
      double error = Math.IEEEremainder(grid[i] + 360 * Grid.hz(i) * delay, 360);
      assertThat(error).isCloseTo(0, within(1e-6));
    }
    assertThat(grid[0]).isNaN();
  }

  @Test
  void whatIsNoCurveIsRefused() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SourceCurve(new double[] {1}, new double[] {1}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SourceCurve(new double[] {2, 1}, new double[] {1, 1}));
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new SourceCurve(new double[] {1, 2}, new double[] {1, Double.NaN}));
  }
}
