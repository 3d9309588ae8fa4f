package evenpair.stations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenpair.acoustics.EarSimulator;
import evenpair.acoustics.Grid;
import evenpair.stations.VerificationRow.RegionCheck;
import evenpair.tolerance.Channel;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class VerificationTrendsTests {
  private static final MeasuredSides SIDES =
      new MeasuredSides(new float[Grid.POINTS], new float[Grid.POINTS], "l", "r");
  private final ReferenceUnitRow unit =
      new ReferenceUnitRow(
          new UUID(1, 1),
          new UUID(2, 2),
          "REF-1",
          "sedge-2",
          "plain",
          EarSimulator.IEC_60318_4,
          SIDES,
          at(0));

  @Test
  void hasNoLimitsFromAFew() {
    TrustViews.Trend trend = trends(0.1, 0.2, 0.1).get(0);

    assertThat(trend.chart()).isNull();
    assertThat(trend.note()).isEqualTo("limits need 8 verifications; have 3");
    assertThat(trend.points())
        .extracting(TrustViews.Point::deviationDb)
        .containsExactly(0.1, 0.2, 0.1);
  }

  /**
   * By hand: mean 0.05, every moving range 0.1, so sigma 0.1·√π/2 = 0.08862 and limits 0.05 ±
   * 0.26587.
   */
  @Test
  void chartsRegionMeansOldestFirst() {
    TrustViews.Trend trend = trends(0, 0.1, 0, 0.1, 0, 0.1, 0, 0.1).get(0);

    assertThat(trend.chart().centreDb()).isCloseTo(0.05, within(1e-12));
    assertThat(trend.chart().lowerDb()).isCloseTo(-0.21587, within(5e-6));
    assertThat(trend.chart().upperDb()).isCloseTo(0.31587, within(5e-6));
    assertThat(trend.points().get(0).movingRangeDb()).isNull();
    assertThat(trend.points().get(1).movingRangeDb()).isCloseTo(0.1, within(1e-12));
    assertThat(trend.points()).allSatisfy(point -> assertThat(point.signals()).isFalse());
  }

  private List<TrustViews.Trend> trends(double... oldestFirst) {
    List<VerificationRow> newestFirst = new ArrayList<>();
    for (int i = 0; i < oldestFirst.length; i++) {
      RegionCheck check =
          new RegionCheck(Channel.LEFT, "mid", oldestFirst[i], oldestFirst[i], 1000.0, true);
      newestFirst.add(
          0,
          new VerificationRow(
              new UUID(3, i), unit, new UUID(4, 4), 0.5, SIDES, List.of(check), at(i)));
    }
    return VerificationTrends.of(newestFirst, Map.of(unit.getId(), "REF-1"));
  }

  private static Provenance at(int hour) {
    Instant instant = Instant.EPOCH.plus(Duration.ofHours(hour));
    return Provenance.of(new UUID(5, 5), instant, Duration.ofHours(12), instant);
  }
}
