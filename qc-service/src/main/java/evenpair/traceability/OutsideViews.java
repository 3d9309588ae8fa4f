package evenpair.traceability;

import com.fasterxml.jackson.annotation.JsonInclude;
import evenpair.acoustics.Curve;
import evenpair.acoustics.Grid;
import evenpair.tolerance.Region;
import evenpair.traceability.outside.RegionComparison;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.media.Schema;
import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.UUID;

/** The answer to an outside report as the API gives it. */
final class OutsideViews {
  private OutsideViews() {}

  /**
   * @param headline whether both agree
   * @param conclusion what follows
   * @param inTheBatch how the pair stands among its batch; null if it cannot be said
   */
  @Schema(name = "OutsideReport")
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record View(
      UUID id,
      String serial,
      String product,
      String productName,
      String maker,
      String tuning,
      String batch,
      UUID inspection,
      Instant measuredAt,
      String station,
      int limitSetVersion,
      Instant receivedAt,
      OutsideRequest.Source source,
      String outcome,
      boolean swapped,
      boolean averageOnly,
      double coverage,
      boolean shapeCompared,
      String headline,
      List<String> conclusion,
      String inTheBatch,
      List<RegionView> regions,
      List<String> assumptions,
      List<String> questions,
      Curves curves,
      Map<String, String> links) {}

  @Schema(name = "OutsideReportRegion")
  @JsonInclude(JsonInclude.Include.ALWAYS)
  record RegionView(
      String name,
      double fromHz,
      double toHz,
      Double theirsDb,
      Double oursDb,
      Double theirExpandedDb,
      Double ourExpandedDb,
      Double en,
      Double limitDb,
      Double percentile,
      String outcome,
      String text) {}

  /**
   * Left − right of both on the grid, smoothed as the limit set says, with bands of U (k = 2); null
   * where absent.
   */
  @Schema(name = "OutsideReportCurves")
  record Curves(
      double[] frequencyHz,
      Double[] oursDb,
      Double[] ourExpandedDb,
      Double[] theirsDb,
      Double[] theirExpandedDb,
      Double[] limitDb) {}

  static View of(OutsideReport report, Texts texts, Locale locale) {
    OutsideWords words = new OutsideWords(texts, locale, report);
    var inspection = report.inspection();
    return new View(
        report.id(),
        inspection.serial(),
        inspection.product(),
        inspection.productName(),
        inspection.maker(),
        inspection.tuning(),
        inspection.batch(),
        inspection.id(),
        inspection.startedAt(),
        inspection.station(),
        inspection.limitSetVersion(),
        report.receivedAt(),
        report.source(),
        report.comparison().outcome().name(),
        report.comparison().swapped(),
        report.comparison().averageOnly(),
        report.comparison().coverage(),
        report.comparison().shapeCompared(),
        words.headline(),
        words.conclusion(),
        words.inTheBatch().orElse(null),
        report.comparison().regions().stream()
            .map(region -> region(report, region, words))
            .toList(),
        words.assumptions(),
        words.questions(),
        curves(report),
        links(report));
  }

  private static Map<String, String> links(OutsideReport report) {
    String unit = "/api/units/" + report.inspection().serial();
    return report.id() == null
        ? Map.of("unit", unit)
        : Map.of(
            "self", unit + "/outside-reports/" + report.id(),
            "unit", unit,
            "dossier", unit + "/dossier?report=" + report.id());
  }

  private static RegionView region(
      OutsideReport report, RegionComparison region, OutsideWords words) {
    return new RegionView(
        region.region(),
        region.band().fromHz(),
        region.band().toHz(),
        region.theirsDb(),
        region.oursDb(),
        region.theirExpandedDb(),
        region.ourExpandedDb(),
        region.en(),
        region.limitDb(),
        report.percentiles().get(region.region()),
        region.outcome().name(),
        words.region(region));
  }

  private static Curves curves(OutsideReport report) {
    var smoothing = report.ours().set().smoothing();
    Curve ours =
        smoothing.apply(report.ours().left()).minus(smoothing.apply(report.ours().right()));
    return new Curves(
        Grid.frequencies(),
        nullable(ours.toArray()),
        byRegion(report, RegionComparison::ourExpandedDb),
        report
            .theirDifference()
            .map(theirs -> nullable(smoothing.apply(theirs).toArray()))
            .orElse(null),
        byRegion(report, RegionComparison::theirExpandedDb),
        limits(report));
  }

  private static Double[] byRegion(
      OutsideReport report, java.util.function.Function<RegionComparison, Double> of) {
    Double[] values = new Double[Grid.POINTS];
    for (RegionComparison region : report.comparison().regions()) {
      for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
        values[i] = of.apply(region);
      }
    }
    return values;
  }

  private static Double[] limits(OutsideReport report) {
    Double[] values = new Double[Grid.POINTS];
    for (Region region : report.ours().set().regions()) {
      for (int i = region.band().firstIndex(); i <= region.band().lastIndex(); i++) {
        int at = i;
        region.match().ifPresent(match -> values[at] = match.at(Grid.hz(at), region.band()));
      }
    }
    return values;
  }

  private static Double[] nullable(double[] values) {
    return Arrays.stream(values)
        .mapToObj(value -> Double.isNaN(value) ? null : value)
        .toArray(Double[]::new);
  }
}
