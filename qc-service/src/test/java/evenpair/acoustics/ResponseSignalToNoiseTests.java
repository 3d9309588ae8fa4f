package evenpair.acoustics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the lead-in's noise says about the scatter of a level. */
class ResponseSignalToNoiseTests {
  private static final Captures RIG = new Captures(48_000);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(RIG.sweep);

  @Test
  void isTheScatterThatRepeatedCapturesShow() throws Exception {
    // 24 captures with other noise: the mean power of what differs from the clean response, over
    // the noise' own estimate.
    double[] clean = RIG.through(FilterChain.of(48_000), 0.5);
    Response truth = ANALYSER.analyse(RIG.samples(clean));
    Band band = new Band(500, 8000);
    double scatter = 0;
    double predicted = 0;
    for (int seed = 0; seed < 24; seed++) {
      Response noisy = ANALYSER.analyse(RIG.samples(RIG.noisy(clean, 30, seed)));
      for (int i = band.firstIndex(); i <= band.lastIndex(); i++) {
        double error = (noisy.level().at(i) - truth.level().at(i)) * Math.log(10) / 20;
        // a band of width w over a window of 0.31 s (Σw²) averages w·0.31 independent values,
        // half of their power in phase
        double values = Math.max(1, (Grid.upperEdge(i) - Grid.lowerEdge(i)) * 0.31);
        scatter += error * error * 2 * values;
        predicted += Math.pow(10, -noisy.signalToNoise().at(i) / 10);
      }
    }
    // within 1.5 dB: the count of independent values in a narrow band is only roughly its width
    // times the window's length
    assertThat(10 * Math.log10(scatter / predicted)).isCloseTo(0, within(1.5));
  }

  @ParameterizedTest
  @ValueSource(doubles = {20, 40, 60})
  void fallsDbForDbWithTheNoise(double belowDb) throws Exception {
    double[] clean = RIG.through(FilterChain.of(48_000), 0.5);
    Response response = ANALYSER.analyse(RIG.samples(RIG.noisy(clean, belowDb, 5)));
    // By hand: |X|² = a²·fs²·L/(4f) over σ²·fs·Σw²/fs, σ² = (a²/2)·10^(−dB/10), Σw²/fs =
    // 0.016/2+0.25+… = 0.297 s at 1 kHz:
    // fs·L/(4·1000·0.5·0.297)·10^(dB/10). The lead-in's estimate at 1 kHz rests on some 90 bins:
    // ±0.5 dB, 3 sigma 1.5 dB.
    double l = Sweep.standard(48_000).rate();
    double energy = 0.0162 + 0.0162 * 3 / 8 + 0.25 + 0.05 * 3 / 8;
    double expected = 10 * Math.log10(48_000 * l / (4 * 1000 * 0.5 * energy)) + belowDb;
    assertThat(response.signalToNoise().at(Grid.nearest(1000))).isCloseTo(expected, within(1.5));
  }

  @Test
  void isAFiniteNumberEvenForASilentLeadIn() throws Exception {
    Response response = ANALYSER.analyse(RIG.samples(RIG.through(FilterChain.of(48_000), 0.35)));
    assertThat(response.signalToNoise().at(Grid.nearest(1000))).isBetween(100.0, 200.0);
  }
}
