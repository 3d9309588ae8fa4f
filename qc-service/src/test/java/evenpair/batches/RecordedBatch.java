package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchSummary;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionSpan;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.UUID;

/**
 * An invented batch {@code SW-2647} of {@code sedge-2}: golden 100 dB everywhere, window ±2 dB from
 * 20 Hz to 200 Hz; each unit is flat at golden + its alignment + its deviation.
 */
final class RecordedBatch implements Inspections {
  private static final Instant START = Instant.parse("2026-11-25T07:00:00Z");

  private final List<BatchUnit> units = new ArrayList<>();
  private final List<float[]> left = new ArrayList<>();
  private final List<float[]> right = new ArrayList<>();
  private final List<double[]> alignments = new ArrayList<>();
  private final List<Integer> versions = new ArrayList<>();
  private final List<String> tunings = new ArrayList<>(List.of("plain"));
  private int version = 3;
  private String occasion = "production";

  RecordedBatch alsoIn(String tuning) {
    tunings.add(tuning);
    return this;
  }

  RecordedBatch at(String nextOccasion) {
    occasion = nextOccasion;
    return this;
  }

  RecordedBatch underVersion(int next) {
    version = next;
    return this;
  }

  RecordedBatch passed(
      String serial, double leftAlignment, double leftDeviation, double rightDeviation) {
    return add(serial, "PASS", leftAlignment, leftDeviation, rightDeviation);
  }

  RecordedBatch failed(String serial, ReasonView... reasons) {
    return add(serial, "FAIL", 0, 0, 0, reasons);
  }

  RecordedBatch neverSealed(String serial) {
    record(
        serial, "FAIL", -1, new ReasonView("seal", "left", null, null, null, null, List.of(), "…"));
    return this;
  }

  static ReasonView reason(String kind, String channel, String region) {
    return new ReasonView(kind, channel, region, 8500.0, 4.3, 3.0, List.of(), "…");
  }

  private RecordedBatch add(
      String serial,
      String verdict,
      double align,
      double dLeft,
      double dRight,
      ReasonView... reasons) {
    record(serial, verdict, left.size(), reasons);
    left.add(flat(100 + align + dLeft));
    right.add(flat(100 + dRight));
    alignments.add(new double[] {align, 0});
    return this;
  }

  private void record(String serial, String verdict, int row, ReasonView... reasons) {
    int n = units.size();
    units.add(
        new BatchUnit(
            new UUID(1, n),
            serial,
            "bench-1",
            occasion,
            verdict,
            START.plusSeconds(n),
            row,
            List.of(reasons)));
    versions.add(version);
  }

  private static float[] flat(double level) {
    float[] levels = new float[Grid.POINTS];
    Arrays.fill(levels, (float) level);
    levels[Grid.POINTS - 1] = Float.NaN; // a curve from a rig that does not reach 20 kHz
    return levels;
  }

  @Override
  public List<BatchSummary> batches() {
    return List.of(
        new BatchSummary(
            "SW-2647",
            "sedge-2",
            tunings,
            versions.stream().distinct().toList(),
            units.size(),
            START));
  }

  @Override
  public BatchCurves batchCurves(
      String batch, String product, String tuning, Integer limitSetVersion) {
    List<BatchUnit> chosen = new ArrayList<>();
    for (int i = 0; i < units.size(); i++) {
      if (limitSetVersion == null || versions.get(i).equals(limitSetVersion)) {
        chosen.add(units.get(i));
      }
    }
    List<Integer> found =
        limitSetVersion == null ? versions.stream().distinct().toList() : List.of(limitSetVersion);
    return new BatchCurves(
        product,
        tuning,
        found,
        chosen,
        join(left),
        join(right),
        alignments.stream().mapToDouble(a -> a[0]).toArray(),
        alignments.stream().mapToDouble(a -> a[1]).toArray(),
        limit(100, false),
        limit(98, true),
        limit(102, true),
        limit(1.5, true),
        List.of(new RegionSpan("bass", 20, 200)),
        "1/12 octave");
  }

  private static float[] join(List<float[]> rows) {
    float[] flat = new float[rows.size() * Grid.POINTS];
    for (int row = 0; row < rows.size(); row++) {
      System.arraycopy(rows.get(row), 0, flat, row * Grid.POINTS, Grid.POINTS);
    }
    return flat;
  }

  private static double[] limit(double value, boolean bassOnly) {
    double[] limit = new double[Grid.POINTS];
    for (int i = 0; i < limit.length; i++) {
      limit[i] = bassOnly && Grid.label(i) > 200 ? Double.NaN : value;
    }
    return limit;
  }

  @Override
  public Optional<Inspection> find(UUID id) {
    return Optional.empty();
  }

  @Override
  public List<Inspection> ofUnit(String serial) {
    return List.of();
  }

  @Override
  public Optional<JudgedCurves> curves(UUID id) {
    return Optional.empty();
  }
}
