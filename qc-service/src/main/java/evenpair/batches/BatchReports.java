package evenpair.batches;

import evenpair.access.People;
import evenpair.batches.BatchReport.Facts;
import evenpair.batches.StatisticsJson.About;
import evenpair.batches.StatisticsJson.CapabilityRow;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.inspections.Inspections.BatchCurves;
import evenpair.inspections.Inspections.BatchUnit;
import evenpair.print.FlowDocument;
import evenpair.print.FlowPrinter;
import evenpair.print.PaperSize;
import evenpair.products.Products;
import evenpair.products.Products.Product;
import evenpair.products.Products.StoredLimitSet;
import evenpair.web.Software;
import evenpair.web.Texts;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.springframework.stereotype.Service;

/** Gathers what a batch's report tells, and has it printed. */
@Service
class BatchReports {
  private final Selection selection;
  private final Products products;
  private final People people;
  private final FlowPrinter printer;
  private final Texts texts;
  private final Software software;

  BatchReports(
      Selection selection,
      Products products,
      People people,
      FlowPrinter printer,
      Texts texts,
      Software software) {
    this.selection = selection;
    this.products = products;
    this.people = people;
    this.printer = printer;
    this.texts = texts;
    this.software = software;
  }

  /**
   * @return a PDF document
   * @throws evenpair.web.Refusal as for the batch's statistics
   */
  byte[] report(String batch, Part part, PaperSize paper, Locale locale) {
    BatchCurves curves = selection.of(batch, part);
    StoredLimitSet stored =
        products
            .limitSet(curves.product(), curves.tuning(), curves.limitSets().get(0))
            .orElseThrow();
    ReportLimits limits =
        new ReportLimits(
            stored.set(),
            stored.digest(),
            products.limitSetHistory(curves.product(), curves.tuning()),
            people);
    Product product = products.find(curves.product()).orElseThrow();
    return printer.print(document(batch, curves, limits, product, paper, locale));
  }

  private FlowDocument document(
      String batch,
      BatchCurves curves,
      ReportLimits limits,
      Product product,
      PaperSize paper,
      Locale locale) {
    FirstPass units = FirstPass.of(curves);
    UnitQuantities quantities = new UnitQuantities(units, limits.set());
    StatisticsWords words = new StatisticsWords(texts, locale);
    About about = about(batch, curves, units);
    ChartFigures charts = new ChartFigures(words, units, quantities, about);
    List<CapabilityRow> capability = new CapabilityFigures(words).rows(quantities);
    Facts facts =
        new Facts(
            product.name(),
            product.maker(),
            new BatchFigures(texts, locale).statistics(batch, curves, Map.of()),
            about,
            capability,
            words.text("capability.method"),
            charts.chart(request(null, null, null, "p")),
            BatchReport.leastCapable(capability).stream().map(row -> chart(charts, row)).toList(),
            new ComponentFigures(words, units, curves.regions(), about).of(Integer.MAX_VALUE),
            new StationFigures(words, units, quantities, about).compared(),
            limits,
            software.version());
    return new BatchReport(new ReportWords(texts, locale)).of(facts, paper);
  }

  private static Charts chart(ChartFigures charts, CapabilityRow row) {
    return charts.chart(request(row.quantity(), row.region(), row.channel(), "individuals"));
  }

  private static ChartRequest request(String quantity, String region, String channel, String kind) {
    return new ChartRequest(quantity, region, channel, kind, null, null, null);
  }

  private static About about(String batch, BatchCurves curves, FirstPass units) {
    List<Instant> times =
        units.units().stream().map(BatchUnit::at).sorted(Comparator.naturalOrder()).toList();
    return new About(
        batch,
        curves.product(),
        curves.tuning(),
        curves.limitSets(),
        units.drawn().size(),
        units.units().stream().map(BatchUnit::station).distinct().sorted().toList(),
        times.get(0),
        times.get(times.size() - 1));
  }
}
