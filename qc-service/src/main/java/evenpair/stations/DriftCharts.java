package evenpair.stations;

import evenpair.statistics.IndividualsChart;
import evenpair.tolerance.Channel;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.springframework.stereotype.Component;
import org.springframework.transaction.annotation.Transactional;

/** How a station's calibrations move from one to the next. */
@Component
@Transactional(readOnly = true)
class DriftCharts {
  private static final String METHOD =
      "Single values and moving ranges: centre ± 3·mean moving range·√π/2.";

  private final MicrophoneCalibrationRows microphones;
  private final OutputCalibrationRows outputs;
  private final StationSettings settings;

  DriftCharts(
      MicrophoneCalibrationRows microphones,
      OutputCalibrationRows outputs,
      StationSettings settings) {
    this.microphones = microphones;
    this.outputs = outputs;
    this.settings = settings;
  }

  TrustViews.Drifts of(StationRow station) {
    List<TrustViews.Drift> drifts = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      List<TrustViews.DriftPoint> points =
          microphones.newestHundred(station.id(), channel).stream()
              .map(
                  row ->
                      point(
                          row,
                          ToneReading.fullScaleLevelDb(row.pascalPerFullScale()),
                          row.change()))
              .toList();
      drifts.add(drift("microphone", channel.word(), "dB SPL", points));
    }
    List<TrustViews.DriftPoint> points =
        outputs.newestHundred(station.id()).stream()
            .map(row -> point(row, dbv(row), row.change()))
            .toList();
    drifts.add(drift("output", null, "dBV", points));
    return new TrustViews.Drifts(drifts, METHOD);
  }

  private static double dbv(OutputCalibrationRow row) {
    return 20 * Math.log10(new OutputGain(row.voltsPerFullScale()).fullScaleVoltsRms());
  }

  private static TrustViews.DriftPoint point(InsertOnlyRow row, double levelDb, Change change) {
    return new TrustViews.DriftPoint(
        row.getId(), row.provenance().measuredAt(), levelDb, change.changeDb(), change.changed());
  }

  private TrustViews.Drift drift(
      String what, String channel, String unit, List<TrustViews.DriftPoint> newestFirst) {
    List<TrustViews.DriftPoint> points = new ArrayList<>(newestFirst);
    Collections.reverse(points);
    int least = VerificationTrends.LEAST_POINTS;
    boolean charted = points.size() >= least;
    return new TrustViews.Drift(
        what,
        channel,
        unit,
        settings.changeDb(),
        charted ? chart(points) : null,
        charted ? null : "limits need " + least + " calibrations; have " + points.size(),
        points);
  }

  private static TrustViews.Chart chart(List<TrustViews.DriftPoint> points) {
    double[] levels = points.stream().mapToDouble(TrustViews.DriftPoint::levelDb).toArray();
    return VerificationTrends.view(IndividualsChart.of(levels), levels.length);
  }
}
