package evenpair.products;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Polarity;
import evenpair.acoustics.TuningFilters;
import evenpair.acoustics.TuningFilters.Filter;
import evenpair.acoustics.TuningFilters.Kind;
import evenpair.products.FileLimits.FileSet;
import evenpair.products.ProductDefinition.TuningDefinition;
import evenpair.products.VersionRows.Golden;
import evenpair.tolerance.GoldenResponse;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ExpectationTests {
  private static final double FS = 48_000;

  private static Golden base(GoldenResponse response) {
    return new Golden(
        new UUID(0, 1),
        "sedge-2",
        "plain",
        1,
        "plain-golden.csv",
        response,
        "00",
        null,
        Instant.EPOCH,
        null,
        null);
  }

  private static TuningDefinition derived(double gainDb, Filter... filters) {
    return new TuningDefinition(
        "warm", true, Optional.of("plain"), List.of(filters), Optional.of(gainDb), Optional.of(FS));
  }

  private static double[] phase(double degrees) {
    double[] phase = new double[Grid.POINTS];
    Arrays.fill(phase, degrees);
    return phase;
  }

  /** The packed goldens were computed from a model of the earpiece, not by this class. */
  @Nested
  class OfThePackedProduct {
    private final FileLimits limits = packed();

    private static FileLimits packed() {
      List<LimitsProblem> problems = new ArrayList<>();
      return LimitsFolder.all("").stream()
          .filter(folder -> folder.name().equals("sedge-2"))
          .findFirst()
          .flatMap(folder -> FileLimits.read(folder, problems))
          .orElseThrow();
    }

    private GoldenResponse golden(String tuning) {
      return limits.sets().stream()
          .filter(file -> file.set().tuning().equals(tuning))
          .map(FileSet::golden)
          .findFirst()
          .orElseThrow();
    }

    private Expectation expected(String tuning) {
      return Expectation.of(limits.product().tuning(tuning).orElseThrow(), base(golden("plain")));
    }

    @ParameterizedTest
    @ValueSource(strings = {"level", "warm", "lively"})
    void isWhatStandsInLimits(String tuning) {
      // the two files are rounded to 0.001 dB each
      assertThat(expected(tuning).deviation(golden(tuning)).deviationDb())
          .isCloseTo(0, within(0.0011));
    }

    @ParameterizedTest
    @ValueSource(strings = {"level", "warm", "lively"})
    void hasThePhaseOfWhatStandsInLimits(String tuning) {
      GoldenResponse golden = golden(tuning);
      GoldenResponse expected = expected(tuning).response();

      // the file's phase is relative to its own arrival, which the filters may move by a sample or
      // two; the correlation looks over such lags, and leaves a thousandth for their step
      assertThat(
              Polarity.correlation(
                  expected.level(),
                  expected.phaseDeg().orElseThrow(),
                  golden.level(),
                  golden.phaseDeg().orElseThrow(),
                  new Band(100, 1000)))
          .isGreaterThan(0.999);
    }
  }

  @Nested
  class Phase {
    @Test
    void isTheSumOfBothHeldWithinATurn() {
      Filter peak = new Filter(Kind.PEAK, 1000, 6, 1);
      GoldenResponse flat = new GoldenResponse(Curve.from(hz -> 100), Optional.of(phase(170)));
      double[] turned = new TuningFilters(List.of(peak), 0, FS).phasesDeg();

      double[] sum = Expectation.of(derived(0, peak), base(flat)).response().phaseDeg().get();

      int leading = Grid.nearest(700);
      // a peak of 6 dB, Q 1 leads by some 15° below its centre: beyond 180° with these 170°
      assertThat(turned[leading]).isBetween(11.0, 20.0);
      assertThat(sum[leading]).isCloseTo(170 + turned[leading] - 360, within(1e-9));
      assertThat(sum[Grid.nearest(1000)]).isCloseTo(170, within(1e-9));
    }

    @Test
    void isUnknownWhereTheOthersIsUnknown() {
      GoldenResponse flat = new GoldenResponse(Curve.from(hz -> 100), Optional.empty());

      assertThat(Expectation.of(derived(-2), base(flat)).response().phaseDeg()).isEmpty();
    }
  }

  @Nested
  class ADeviation {
    private final Expectation flat98 =
        Expectation.of(
            derived(-2), base(new GoldenResponse(Curve.from(hz -> 100), Optional.empty())));

    private Expectation.Deviation deviation(double at1k) {
      double[] level = new double[Grid.POINTS];
      Arrays.fill(level, 98);
      level[Grid.nearest(1000)] += at1k;
      return flat98.deviation(new GoldenResponse(Curve.of(level), Optional.empty()));
    }

    @Test
    void isTheLargestWithItsSignAndPlace() {
      assertThat(deviation(-0.7).deviationDb()).isCloseTo(-0.7, within(1e-9));
      assertThat(deviation(-0.7).atHz()).isEqualTo(Grid.hz(Grid.nearest(1000)));
    }

    @Test
    void isNotableAboveHalfADecibel() {
      assertThat(deviation(0.49).notable()).isFalse();
      assertThat(deviation(0.51).notable()).isTrue();
      assertThat(deviation(-0.51).notable()).isTrue();
    }
  }
}
