package evenpair.batches;

import evenpair.acoustics.Grid;
import evenpair.products.Products;
import evenpair.products.Products.StoredLimitSet;
import evenpair.tolerance.LimitCurves;
import evenpair.web.Texts;
import io.swagger.v3.oas.annotations.media.Schema;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Component;

/** Says what the columns of an export mean, and what its curves are to be compared with. */
@Component
class ExportDictionary {
  /** Parts of the two lists. */
  private static final Map<String, String> FIELDS =
      Map.ofEntries(
          Map.entry("check", "text"),
          Map.entry("channel", "text"),
          Map.entry("region", "text"),
          Map.entry("at_hz", "64-bit float"),
          Map.entry("measured", "64-bit float"),
          Map.entry("limit", "64-bit float"),
          Map.entry("also_regions", "list of text"),
          Map.entry("text", "text"),
          Map.entry("judged", "boolean"),
          Map.entry("state", "text"),
          Map.entry("margin", "64-bit float"),
          Map.entry("guard", "64-bit float"),
          Map.entry("unit", "text"));

  private final Products products;
  private final Texts texts;

  ExportDictionary(Products products, Texts texts) {
    this.products = products;
    this.texts = texts;
  }

  @Schema(name = "ExportDictionary")
  record Dictionary(
      String batch,
      String product,
      String tuning,
      int limitSet,
      String row,
      @Schema(description = "the 241 frequencies of a curve") List<Double> frequencyHz,
      @Schema(description = "golden response, dB SPL, not smoothed") List<Double> goldenDb,
      @Schema(description = "smoothing of both sides before judging") String smoothing,
      @Schema(description = "allowed deviation, null outside regions") List<Double> lowerDb,
      List<Double> upperDb,
      @Schema(description = "largest left − right") List<Double> matchDb,
      List<Entry> columns,
      @Schema(description = "parts of an element of reasons and regions") List<Entry> fields) {}

  @Schema(name = "ExportColumn")
  record Entry(String name, String type, String text) {}

  Dictionary of(ExportPart part, Locale locale) {
    StoredLimitSet limits =
        products.limitSet(part.product(), part.tuning(), part.limitSet()).orElseThrow();
    LimitCurves curves = LimitCurves.of(limits.set());
    return new Dictionary(
        part.batch(),
        part.product(),
        part.tuning(),
        part.limitSet(),
        texts.render(locale, "export.row", Map.of()),
        list(Grid.frequencies()),
        list(limits.golden().level().toArray()),
        limits.set().smoothing().label(),
        list(curves.lowerDb()),
        list(curves.upperDb()),
        list(curves.matchDb()),
        ExportColumn.ALL.stream()
            .map(c -> new Entry(c.name(), c.kind().word(), text(locale, "column", c.name())))
            .toList(),
        FIELDS.entrySet().stream()
            .sorted(Map.Entry.comparingByKey())
            .map(f -> new Entry(f.getKey(), f.getValue(), text(locale, "field", f.getKey())))
            .toList());
  }

  private String text(Locale locale, String kind, String name) {
    return texts.render(locale, "export." + kind + '.' + name, Map.of());
  }

  private static List<Double> list(double[] values) {
    return Arrays.stream(values)
        .mapToObj(value -> Double.isNaN(value) ? null : (Double) value)
        .toList();
  }
}
