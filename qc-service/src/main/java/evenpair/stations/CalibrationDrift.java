package evenpair.stations;

import evenpair.statistics.IndividualsChart;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;

/**
 * How a gain moves from one calibration to the next, as a control chart of single values.
 *
 * @param limitDb what a change from one calibration to the next may be, dB
 * @param chart null while there are too few points
 * @param note why there is no chart; null if there is one
 * @param method how the control limits were worked out
 * @param points oldest first
 */
@Schema(name = "CalibrationDrift")
record CalibrationDrift(
    @Schema(example = "0.5") double limitDb,
    TrustViews.Chart chart,
    String note,
    String method,
    List<Point> points) {
  static final String METHOD =
      "Gains in dB re the oldest one shown, single values and moving ranges: centre ± 3·mean moving range·√π/2.";

  /**
   * @param gain pascal or volts per full scale, above 0
   */
  record Reading(Instant measuredAt, double gain) {}

  /**
   * @param deviationDb 20·lg(gain/oldest gain shown)
   * @param movingRangeDb |this − the one before|; null for the first
   * @param signals outside the chart's limits; null without a chart
   */
  @Schema(name = "CalibrationDriftPoint")
  record Point(Instant measuredAt, double deviationDb, Double movingRangeDb, Boolean signals) {}

  /**
   * @param newestFirst calibrations of one gain, newest first
   */
  static CalibrationDrift of(List<Reading> newestFirst, double limitDb) {
    int count = newestFirst.size();
    double[] deviations = new double[count];
    for (int i = 0; i < count; i++) {
      double oldest = newestFirst.get(count - 1).gain();
      deviations[i] = 20 * Math.log10(newestFirst.get(count - 1 - i).gain() / oldest);
    }
    int least = VerificationTrends.LEAST_POINTS;
    IndividualsChart chart = count < least ? null : IndividualsChart.of(deviations);
    List<Point> points = new ArrayList<>();
    for (int i = 0; i < count; i++) {
      points.add(
          new Point(
              newestFirst.get(count - 1 - i).measuredAt(),
              deviations[i],
              i == 0 ? null : Math.abs(deviations[i] - deviations[i - 1]),
              chart == null ? null : chart.signals(deviations[i])));
    }
    return new CalibrationDrift(limitDb, view(chart, count), note(chart, count, least), METHOD, List.copyOf(points));
  }

  private static String note(IndividualsChart chart, int count, int least) {
    return chart == null ? "limits need " + least + " calibrations; have " + count : null;
  }

  private static TrustViews.Chart view(IndividualsChart chart, int points) {
    return chart == null
        ? null
        : new TrustViews.Chart(
            chart.mean(), chart.lower(), chart.upper(), chart.movingRangeUpper(), points);
  }
}
