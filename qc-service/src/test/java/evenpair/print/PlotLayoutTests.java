package evenpair.print;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.Grid;
import evenpair.print.ResponsePlot.PlotRegion;
import java.awt.geom.Rectangle2D;
import java.util.Arrays;
import java.util.List;
import java.util.function.DoubleUnaryOperator;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PlotLayoutTests {
  /**
   * Places are sums and quotients of some ten doubles of up to 1000 points: far below a billionth
   * of a point.
   */
  private static final double EXACT = 1e-9;

  @ParameterizedTest
  @ValueSource(doubles = {160, 220, 300, 400})
  void makesOneDecadeAsLongAsItsAspectSays(double height) {
    PlotLayout layout =
        new PlotLayout(
            plot(hz -> 105 - 3 * Math.log10(hz / 1000)),
            new Rectangle2D.Double(47, 300, 500, height));

    double decade = layout.x(1000) - layout.x(100);
    assertThat(layout.yOfLevel(100) - layout.yOfLevel(100 + layout.aspect().dbPerDecade()))
        .isCloseTo(decade, within(EXACT));
    assertThat(layout.yOfDifference(0) - layout.yOfDifference(1))
        .isCloseTo(decade / layout.aspect().dbPerDecade(), within(EXACT));
  }

  @ParameterizedTest
  @ValueSource(doubles = {160, 220, 300, 400})
  void staysInsideTheRoom(double height) {
    Rectangle2D room = new Rectangle2D.Double(47, 300, 500, height);
    PlotLayout layout = new PlotLayout(plot(hz -> 105 - 15 * Math.log10(hz / 1000)), room);

    assertThat(room.contains(layout.upper())).isTrue();
    assertThat(room.contains(layout.lower())).isTrue();
    assertThat(layout.lower().getMinY()).isGreaterThan(layout.upper().getMaxY());
  }

  @Test
  void takesFiftyDecibelsADecadeWhereTheLevelsSpanTooMuch() {
    Rectangle2D room = new Rectangle2D.Double(0, 0, 500, 300);

    assertThat(new PlotLayout(plot(hz -> 105), room).aspect()).isEqualTo(Aspect.DECADE_25_DB);
    assertThat(new PlotLayout(plot(hz -> 105 - 20 * Math.log10(hz / 1000)), room).aspect())
        .isEqualTo(Aspect.DECADE_50_DB);
  }

  @Test
  void spansTwentyHertzToTwentyKilohertz() {
    PlotLayout layout = new PlotLayout(plot(hz -> 105), new Rectangle2D.Double(0, 0, 500, 300));

    assertThat(layout.x(20)).isEqualTo(layout.upper().getMinX());
    assertThat(layout.x(20_000)).isCloseTo(layout.upper().getMaxX(), within(EXACT));
    assertThat(layout.x(200) - layout.x(20))
        .isCloseTo(layout.upper().getWidth() / 3, within(EXACT));
  }

  @Nested
  class LevelAxis {
    @Test
    void holdsTheWindowAndTheCurvesInsideTheRegionsInWholeSteps() {
      LevelRange range = LevelRange.ofLevels(plot(hz -> 101));

      // by hand: window 99 … 103; one dB of room and then whole 5 dB: 95 … 105, widened to the
      // least span of 25 dB
      assertThat(range).isEqualTo(new LevelRange(80, 105));
    }

    @Test
    void leavesOutWhatLiesOutsideTheRegions() {
      assertThat(LevelRange.ofLevels(plot(hz -> hz > 16_300 ? 20 : 101)))
          .isEqualTo(new LevelRange(80, 105));
    }

    @Test
    void isTheSameUpwardsAndDownwardsForTheDifference() {
      LevelRange range = LevelRange.ofDifference(plot(hz -> 101));

      // the limit of 2.5 dB and 15 % of room, in whole dB
      assertThat(range).isEqualTo(new LevelRange(-3, 3));
    }

    @Test
    void refusesAPlotWithoutAnyLevel() {
      assertThatIllegalArgumentException()
          .isThrownBy(() -> LevelRange.ofLevels(plot(hz -> Double.NaN)));
    }
  }

  @Test
  void refusesCurvesOfDifferentLengths() {
    ResponsePlot good = plot(hz -> 100);

    assertThatIllegalArgumentException()
        .isThrownBy(
            () ->
                new ResponsePlot(
                    good.frequencyHz(),
                    new double[3],
                    good.right(),
                    good.golden(),
                    good.lower(),
                    good.upper(),
                    good.difference(),
                    good.matchLimit(),
                    good.regions(),
                    100,
                    10_000));
  }

  /** Both channels lie on golden; window ±2 dB and limit 2.5 dB over one region up to 16 kHz. */
  private static ResponsePlot plot(DoubleUnaryOperator golden) {
    return new ResponsePlot(
        Grid.frequencies(),
        curve(golden),
        curve(golden),
        curve(golden),
        inside(hz -> golden.applyAsDouble(hz) - 2),
        inside(hz -> golden.applyAsDouble(hz) + 2),
        curve(hz -> 0),
        inside(hz -> 2.5),
        List.of(new PlotRegion("all", 20, 16_000, false)),
        100,
        10_000);
  }

  private static double[] inside(DoubleUnaryOperator limit) {
    return curve(hz -> hz <= 16_000 ? limit.applyAsDouble(hz) : Double.NaN);
  }

  private static double[] curve(DoubleUnaryOperator level) {
    return Arrays.stream(Grid.frequencies()).map(level).toArray();
  }
}
