package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;

import evenpair.acoustics.Band;
import evenpair.acoustics.Curve;
import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.acoustics.Smoothing;
import evenpair.statistics.GaugeStudy;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Drive;
import evenpair.tolerance.GoldenResponse;
import evenpair.tolerance.LimitSet;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import org.junit.jupiter.api.Test;

class GaugeAnalysisTests {
  private static final GoldenResponse GOLDEN =
      new GoldenResponse(Curve.from(hz -> 100), Optional.empty());
  private static final Region MID =
      new Region(
          "mid",
          new Band(200, 5000),
          Span.constant(-1.5),
          Span.constant(1.5),
          Optional.of(Span.constant(1)),
          true);
  private static final LimitSet SET =
      new LimitSet(
          "sedge-2",
          "plain",
          1,
          EarSimulator.IEC_60318_4,
          "plain-golden.csv",
          new Drive.Voltage(180),
          Smoothing.NONE,
          new LimitSet.LevelLimit(new Band(300, 3000), -1.5, 1.5, 1.0),
          List.of(MID),
          List.of(),
          false,
          OptionalDouble.empty(),
          30,
          new LimitSet.SeatingRules(1, 3, 3, 8, new Band(5000, 11_000)),
          0.5,
          new LimitSet.DecisionRule(false, 0, false));

  private final Random random = new Random(7);

  /**
   * Each measurement has one random gain (sd 0.4, both sides alike) and a ripple of its own at 8
   * kHz on the left (sd 0.3). The gain is in the level's offset and nowhere else; the ripple in the
   * left deviation and in the match at 8 kHz. 20 × 3 × 5 measurements leave 240 degrees of freedom,
   * plus 38 when pooled: a standard deviation is known to 1/√480 = 4.6 %, three of that are
   * allowed.
   */
  @Test
  void putsEachSpreadWhereItIsJudged() {
    GaugeStudy design = new GaugeStudy(20, 3, 5);
    List<MeasuredSides> measured = new ArrayList<>();
    int at8k = Grid.nearest(8000);
    for (int i = 0; i < design.size(); i++) {
      double gain = 0.4 * random.nextGaussian();
      double[] left = Curve.from(hz -> 100 + gain).toArray();
      left[at8k] += 0.3 * random.nextGaussian();
      measured.add(sides(Curve.of(left), Curve.from(hz -> 99 + gain)));
    }

    GaugeAnalysis analysis = GaugeAnalysis.of(design, measured, SET, GOLDEN, 0.25);

    assertThat(analysis.offset().get(Channel.LEFT).ev()).isBetween(0.4 * 0.86, 0.4 * 1.14);
    assertThat(analysis.deviation().get(Channel.LEFT)[at8k].ev()).isBetween(0.3 * 0.86, 0.3 * 1.14);
    assertThat(analysis.match()[at8k].ev()).isBetween(0.3 * 0.86, 0.3 * 1.14);
    // floats near 100 dB carry 4e-6 dB of rounding each
    assertThat(analysis.deviation().get(Channel.LEFT)[Grid.nearest(1000)].ev()).isLessThan(1e-5);
    assertThat(analysis.balance().orElseThrow().ev()).isLessThan(1e-5);
    assertThat(analysis.regions())
        .extracting(GaugeAnalysis.RegionMeans::quantity)
        .containsExactly("left", "right", "left-right");
    assertThat(analysis.regions().get(0).result().orElseThrow().ev())
        .isBetween(0.4 * 0.86, 0.4 * 1.14);
  }

  @Test
  void hasNothingWhereAMeasurementHasNoData() {
    GaugeStudy design = new GaugeStudy(2, 2, 2);
    List<MeasuredSides> measured = new ArrayList<>();
    for (int i = 0; i < design.size(); i++) {
      double[] left = Curve.from(hz -> 100 + random.nextGaussian()).toArray();
      if (i == 5) {
        left[Grid.nearest(1000)] = Double.NaN;
      }
      measured.add(sides(Curve.of(left), Curve.from(hz -> 100)));
    }

    GaugeAnalysis analysis = GaugeAnalysis.of(design, measured, SET, GOLDEN, 0.25);

    assertThat(analysis.level().get(Channel.LEFT)[Grid.nearest(1000)]).isNull();
    assertThat(analysis.level().get(Channel.LEFT)[Grid.nearest(100)]).isNotNull();
    assertThat(analysis.regions().get(0).result()).isEmpty();
    // the alignment band is not covered: no offset on that side, no balance
    assertThat(analysis.offset()).containsOnlyKeys(Channel.RIGHT);
    assertThat(analysis.balance()).isEmpty();
  }

  private static MeasuredSides sides(Curve left, Curve right) {
    return new MeasuredSides(left.toFloats(), right.toFloats(), "l", "r");
  }
}
