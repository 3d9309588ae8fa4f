package evenpair.captures;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Response;
import evenpair.acoustics.ResponseAnalyser;
import evenpair.acoustics.Samples;
import evenpair.acoustics.Sweep;
import evenpair.acoustics.SweepSignal;
import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Real headphones: the stimulus through measured impulse responses, sent as WAV captures, must give
 * the third-octave levels that were computed from the same impulse responses without this program.
 * Source and licence: {@code seating-study/SOURCE.md} in the test resources.
 */
class MeasuredHeadphonesTests {
  private static final double FS = 44_100;
  private static final Sweep SWEEP = Sweep.standard(FS);
  private static final ResponseAnalyser ANALYSER = new ResponseAnalyser(SWEEP);
  private static final int FIRST_BAND_COLUMN = 3;

  /** Both tests use the same captures; convolving them directly takes most of the time. */
  private static final Map<Integer, Curve> MEASURED = new ConcurrentHashMap<>();

  /**
   * The bar. Forming third octaves from 1/24-octave bands takes up to 0.09 of it (computed apart,
   * with NumPy).
   */
  private static final double ALLOWED_DB = 0.1;

  static Stream<Arguments> seatings() throws IOException {
    List<String> rows =
        new String(resource("third-octave-levels.csv"), StandardCharsets.UTF_8)
            .lines()
            .skip(1)
            .toList();
    return Stream.iterate(0, i -> i + 2)
        .limit(rows.size() / 2)
        .map(i -> Arguments.of(name(rows.get(i)), levels(rows.get(i)), levels(rows.get(i + 1))));
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("seatings")
  void giveTheirPublishedThirdOctaveLevelsAndDifferences(String name, double[] left, double[] right)
      throws Exception {
    WavAudio impulses = WavReader.read(resource(name + ".wav"));
    double[] measuredLeft = thirdOctaves(measured(impulses.channels().get(0)));
    double[] measuredRight = thirdOctaves(measured(impulses.channels().get(1)));
    // levels up to one constant: its best value is the mean difference
    double constant = mean(measuredLeft, left);
    for (int band = 0; band < left.length; band++) {
      assertThat(measuredLeft[band] - constant)
          .as("left, band %d", band)
          .isCloseTo(left[band], within(ALLOWED_DB));
      assertThat(measuredLeft[band] - measuredRight[band])
          .as("difference, band %d", band)
          .isCloseTo(left[band] - right[band], within(ALLOWED_DB));
    }
    double rightConstant = mean(measuredRight, right);
    for (int band = 0; band < right.length; band++) {
      assertThat(measuredRight[band] - rightConstant)
          .as("right, band %d", band)
          .isCloseTo(right[band], within(ALLOWED_DB));
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("seatings")
  void giveTheirOwnSpectrumAtTheGridPoints(String name) throws Exception {
    for (Samples impulse : WavReader.read(resource(name + ".wav")).channels()) {
      Curve measured = measured(impulse).plus(20 * Math.log10(4));
      for (int i = 4; i < Grid.POINTS && Grid.label(i) <= 16_000; i += 9) {
        // the bar for a known linear system; 24-bit rounding is far below it
        assertThat(measured.at(i))
            .as("%s Hz", Grid.label(i))
            .isCloseTo(bandMeanDb(impulse.values(), i), within(0.05));
      }
    }
  }

  /** Stimulus convolved with the impulse response, through a 24-bit WAV file, into a response. */
  private static Curve measured(Samples impulse) throws Exception {
    int key = Arrays.hashCode(impulse.values());
    Curve known = MEASURED.get(key);
    if (known == null) {
      known = measuredAnew(impulse);
      MEASURED.put(key, known);
    }
    return known;
  }

  private static Curve measuredAnew(Samples impulse) throws Exception {
    float[] stimulus = SweepSignal.render(SWEEP);
    int from = (int) (SWEEP.leadSeconds() * FS);
    int to = from + (int) Math.ceil(SWEEP.seconds() * FS);
    double[] capture = new double[stimulus.length + impulse.values().length];
    for (int k = 0; k < impulse.values().length; k++) {
      double tap = impulse.values()[k];
      for (int n = from; n < to; n++) {
        capture[n + k] += tap * stimulus[n];
      }
    }
    double peak = Arrays.stream(capture).map(Math::abs).max().orElseThrow();
    // both channels by the same factor, which the differences need
    assertThat(peak / 4).isLessThan(1);
    double[] scaled = Arrays.stream(capture).map(x -> x / 4).toArray();
    WavAudio audio = WavReader.read(WavBytes.file(WavBytes.PCM, 24, (int) FS, scaled));
    Response response = ANALYSER.analyse(audio.channels().get(0));
    return response.level();
  }

  /**
   * Power means over third octaves: seven grid bands and half of one at each end. Some of these
   * headphones rise by more than 20 dB within a third of an octave, so the share of a half band is
   * taken from the slope there (power ∝ e^(b·x), x in grid steps, the widening of the bands
   * included), not as one half.
   */
  private static double[] thirdOctaves(Curve level) {
    double[] result = new double[23];
    for (int band = 0; band < result.length; band++) {
      int centre = Grid.nearest(100 * Math.pow(10, band / 10.0));
      double area = 0;
      for (int k = -3; k <= 3; k++) {
        area += area(level, centre + k);
      }
      for (int side = -1; side <= 1; side += 2) {
        int i = centre + 4 * side;
        double b = (level.at(i + 1) - level.at(i - 1)) / 2 * Math.log(10) / 10 + Math.log(10) / 80;
        double upperShare = 1 / (1 + Math.exp(-b / 2));
        area += area(level, i) * (side < 0 ? upperShare : 1 - upperShare);
      }
      result[band] = 10 * Math.log10(area / (Grid.hz(centre + 4) - Grid.hz(centre - 4)));
    }
    return result;
  }

  private static double area(Curve level, int i) {
    return (Grid.upperEdge(i) - Grid.lowerEdge(i)) * Math.pow(10, level.at(i) / 10);
  }

  private static double mean(double[] a, double[] b) {
    double sum = 0;
    for (int k = 0; k < a.length; k++) {
      sum += a[k] - b[k];
    }
    return sum / a.length;
  }

  /**
   * Mean of |Σ h·e^(−jωn)|² over a grid band, summed directly: the slow way, without any transform.
   */
  private static double bandMeanDb(float[] impulse, int i) {
    // the impulse response lasts 46 ms, so |H|² has no detail finer than 10 Hz: Simpson's rule in
    // steps below 3 Hz
    int steps = 2 * (int) Math.ceil((Grid.upperEdge(i) - Grid.lowerEdge(i)) / 6) + 2;
    double sum = 0;
    for (int k = 0; k <= steps; k++) {
      double hz = Grid.lowerEdge(i) + (Grid.upperEdge(i) - Grid.lowerEdge(i)) * k / steps;
      sum += (k == 0 || k == steps ? 1 : k % 2 == 1 ? 4 : 2) * power(impulse, hz);
    }
    return 10 * Math.log10(sum / (3 * steps));
  }

  private static double power(float[] impulse, double hz) {
    double turnRe = Math.cos(2 * Math.PI * hz / FS);
    double turnIm = -Math.sin(2 * Math.PI * hz / FS);
    double re = 0;
    double im = 0;
    // Horner's rule: H = h0 + z·(h1 + z·(h2 + …))
    for (int n = impulse.length - 1; n >= 0; n--) {
      double next = re * turnRe - im * turnIm + impulse[n];
      im = re * turnIm + im * turnRe;
      re = next;
    }
    return re * re + im * im;
  }

  private static String name(String row) {
    String[] cells = row.split(",");
    return "%s_pass%02d".formatted(cells[0], Integer.parseInt(cells[1]));
  }

  private static double[] levels(String row) {
    return Arrays.stream(row.split(","))
        .skip(FIRST_BAND_COLUMN)
        .mapToDouble(Double::parseDouble)
        .toArray();
  }

  private static byte[] resource(String name) throws IOException {
    try (InputStream in =
        MeasuredHeadphonesTests.class.getResourceAsStream("/seating-study/" + name)) {
      return in.readAllBytes();
    }
  }
}
