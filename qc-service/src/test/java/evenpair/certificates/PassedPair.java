package evenpair.certificates;

import evenpair.acoustics.Grid;
import evenpair.inspections.Inspections.AttemptSummary;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.JudgedCurves;
import evenpair.inspections.Inspections.ReasonView;
import evenpair.inspections.Inspections.RegionSpan;
import evenpair.inspections.Inspections.RegionView;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;
import java.util.stream.IntStream;

/**
 * An invented pair that passed: smooth curves with a canal resonance, windows that widen in the
 * treble.
 */
final class PassedPair {
  static final UUID ID = UUID.fromString("019aa3c1-52b0-7d4e-9a31-6f0c2b7e8d15");
  static final UUID LIMITS = UUID.fromString("019aa3b0-0000-7000-8000-000000000003");
  static final Instant CLOSED = Instant.parse("2026-11-25T07:45:12Z");
  static final List<RegionSpan> REGIONS =
      List.of(
          new RegionSpan("bass", 20, 200),
          new RegionSpan("mid", 200, 6000),
          new RegionSpan("treble", 6000, 16_000));

  private PassedPair() {}

  static Inspection inspection() {
    return named("Sedge 2", "Saltmarsh Works", "SG2-004217", "plain", views(REGIONS));
  }

  static Inspection named(
      String product, String maker, String serial, String tuning, List<RegionView> views) {
    return new Inspection(
        ID,
        serial,
        "SW-2647",
        "sedge-2",
        product,
        maker,
        tuning,
        "bench-1",
        new UUID(7, 7),
        "production",
        "closed",
        "PASS",
        "PASS",
        "done",
        3,
        LIMITS,
        "IEC 60318-4",
        CLOSED.minusSeconds(4),
        CLOSED,
        "0.1.0",
        List.of(new AttemptSummary(1, 1, "PASS", CLOSED.minusSeconds(4), "aa", "bb")),
        List.of(),
        views,
        "PASS",
        false);
  }

  static Inspection closed(UUID id, String tuning, String verdict, String unitVerdict) {
    Inspection i = inspection();
    return new Inspection(
        id,
        i.serial(),
        i.batch(),
        i.product(),
        i.productName(),
        i.maker(),
        tuning,
        i.station(),
        i.operatorRef(),
        i.occasion(),
        "closed",
        verdict,
        verdict,
        "done",
        i.limitSetVersion(),
        LIMITS,
        i.earSimulator(),
        i.startedAt(),
        i.closedAt(),
        i.softwareVersion(),
        i.attempts(),
        List.of(),
        i.regions(),
        unitVerdict,
        false);
  }

  static Inspection changed(
      Inspection i, String state, String verdict, String occasion, ReasonView... reasons) {
    return new Inspection(
        i.id(),
        i.serial(),
        i.batch(),
        i.product(),
        i.productName(),
        i.maker(),
        i.tuning(),
        i.station(),
        i.operatorRef(),
        occasion,
        state,
        verdict,
        i.lastAttempt(),
        i.next(),
        i.limitSetVersion(),
        LIMITS,
        i.earSimulator(),
        i.startedAt(),
        i.closedAt(),
        i.softwareVersion(),
        i.attempts(),
        List.of(reasons),
        i.regions(),
        i.unitVerdict(),
        false);
  }

  static List<RegionView> views(List<RegionSpan> regions) {
    List<RegionView> views = new ArrayList<>();
    views.add(new RegionView(null, "level", "left", true, 1.19, null, 0.31, 1.5));
    views.add(new RegionView(null, "level", "right", true, 1.38, null, -0.12, -1.5));
    views.add(new RegionView(null, "balance", null, true, 0.57, null, 0.43, 1.0));
    for (int i = 0; i < regions.size(); i++) {
      String name = regions.get(i).name();
      double at = Math.sqrt(regions.get(i).fromHz() * regions.get(i).toHz());
      views.add(new RegionView(name, "window", "left", true, 1.1 - 0.1 * i % 0.7, at, 0.9, 2.0));
      views.add(new RegionView(name, "window", "right", true, 1.4, at * 1.3, -0.6, -2.0));
      views.add(new RegionView(name, "match", null, true, 0.8, at, 0.7, 1.5));
    }
    views.add(new RegionView(null, "polarity", "left", true, null, null, null, null));
    views.add(new RegionView(null, "polarity", "right", true, null, null, null, null));
    return views;
  }

  static JudgedCurves curves(List<RegionSpan> regions) {
    double[] hz = Grid.frequencies();
    double[] golden = of(hz, PassedPair::golden);
    double[] left = of(hz, f -> golden(f) + 0.31 + 0.5 * Math.sin(3 * Math.log(f)));
    double[] right =
        of(
            hz,
            f ->
                golden(f)
                    - 0.12
                    + 0.4 * Math.sin(3 * Math.log(f) + 0.8)
                    + 0.3 * Math.cos(9 * Math.log(f)));
    double[] difference =
        IntStream.range(0, hz.length).mapToDouble(i -> left[i] - right[i]).toArray();
    double[] reach = of(hz, f -> inside(f, regions) ? halfWidth(f) : Double.NaN);
    double[] lower = IntStream.range(0, hz.length).mapToDouble(i -> golden[i] - reach[i]).toArray();
    double[] upper = IntStream.range(0, hz.length).mapToDouble(i -> golden[i] + reach[i]).toArray();
    double[] match =
        of(
            hz,
            f ->
                !inside(f, regions)
                    ? Double.NaN
                    : f < 200 ? 1.5 : f < 6000 ? 1.0 : 1.0 + 2.5 * Math.log(f / 6000));
    return new JudgedCurves(
        hz,
        left,
        right,
        golden,
        lower,
        upper,
        difference,
        match,
        0.31,
        -0.12,
        regions,
        "1/12 octave",
        100,
        10_000);
  }

  private static boolean inside(double hz, List<RegionSpan> regions) {
    return regions.stream()
        .anyMatch(region -> hz >= region.fromHz() * 0.985 && hz <= region.toHz() * 1.015);
  }

  private static double halfWidth(double hz) {
    return hz < 200 ? 2 : hz < 6000 ? 1.5 : 3 + 3 * Math.log(hz / 6000) / Math.log(16_000 / 6000.0);
  }

  /** Bass shelf, ear-canal hump near 2.7 kHz, length-mode peak at 8.2 kHz, fall above. */
  private static double golden(double hz) {
    return 104
        + 5 / (1 + Math.pow(hz / 120, 2))
        + hump(hz, 2700, 9, 0.22)
        + hump(hz, 8200, 7, 0.06)
        - 14 * Math.max(0, Math.log10(hz / 6000))
        - 40 * Math.max(0, Math.log10(hz / 15_000));
  }

  private static double hump(double hz, double centre, double height, double width) {
    double distance = Math.log10(hz / centre) / width;
    return height * Math.exp(-distance * distance / 2);
  }

  private static double[] of(double[] hz, java.util.function.DoubleUnaryOperator level) {
    return java.util.Arrays.stream(hz).map(level).toArray();
  }
}
