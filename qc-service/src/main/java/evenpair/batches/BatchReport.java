package evenpair.batches;

import evenpair.batches.BatchJson.RankedReason;
import evenpair.batches.BatchJson.Statistics;
import evenpair.batches.BatchJson.Yield;
import evenpair.batches.StatisticsJson.CapabilityRow;
import evenpair.batches.StatisticsJson.Charts;
import evenpair.batches.StatisticsJson.Components;
import evenpair.batches.StatisticsJson.Index;
import evenpair.batches.StatisticsJson.StationComparison;
import evenpair.batches.StatisticsJson.StationDifference;
import evenpair.print.FlowDocument;
import evenpair.print.FlowDocument.Block;
import evenpair.print.FlowDocument.Column;
import evenpair.print.FlowDocument.Figure;
import evenpair.print.FlowDocument.FigureHeight;
import evenpair.print.FlowDocument.Note;
import evenpair.print.FlowDocument.Paragraph;
import evenpair.print.FlowDocument.Section;
import evenpair.print.FlowDocument.Table;
import evenpair.print.PaperSize;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** Lays a batch's figures out as a report of three to six pages. */
final class BatchReport {
  private static final int MOST_REASONS = 12;

  /** Up to so many quantities, the least capable ones, are shown as control charts. */
  private static final int CHARTS = 2;

  private final ReportWords words;

  BatchReport(ReportWords words) {
    this.words = words;
  }

  /** Everything that the report tells of. */
  record Facts(
      String productName,
      String maker,
      Statistics statistics,
      StatisticsJson.About about,
      List<CapabilityRow> capability,
      String capabilityMethod,
      Charts failures,
      List<Charts> charts,
      Components components,
      StationComparison stations,
      ReportLimits limits,
      String software) {}

  /**
   * @return the quantities worth a chart: those with the lowest Ppk
   */
  static List<CapabilityRow> leastCapable(List<CapabilityRow> rows) {
    return rows.stream()
        .filter(row -> row.ppk() != null)
        .filter(row -> !row.quantity().equals("below-upper"))
        .filter(row -> !row.quantity().equals("above-lower"))
        .sorted(java.util.Comparator.comparingDouble(row -> row.ppk().value()))
        .limit(CHARTS)
        .toList();
  }

  FlowDocument of(Facts facts, PaperSize paper) {
    Statistics statistics = facts.statistics();
    List<Section> sections = new ArrayList<>();
    sections.add(summary(facts));
    sections.add(reasons(statistics));
    sections.add(curves(statistics));
    sections.add(capability(facts));
    sections.add(order(facts));
    sections.add(stations(facts.stations()));
    sections.add(limits(facts.limits()));
    sections.add(
        new Section(
            words.text("signatures"),
            false,
            List.of(
                new Figure(
                    new SignatureDrawing(
                        words.text("prepared"), words.text("approved"), words.text("name-date")),
                    FigureHeight.LOW))));
    return new FlowDocument(
        paper,
        words.locale(),
        words.text("title", Map.of("batch", statistics.batch(), "product", facts.productName())),
        facts.about().lastAt(),
        facts.maker(),
        words.text("header", Map.of("batch", statistics.batch(), "tuning", statistics.tuning())),
        words.text("footer", Map.of("software", facts.software())),
        sections);
  }

  private Section summary(Facts facts) {
    Statistics statistics = facts.statistics();
    Yield first = statistics.yield();
    Yield last = statistics.finalYield();
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Paragraph(
            words.text(
                "about",
                Map.of(
                    "product",
                    facts.productName(),
                    "tuning",
                    statistics.tuning(),
                    "limitSet",
                    facts.limits().set().version(),
                    "from",
                    ReportWords.date(facts.about().firstAt()),
                    "to",
                    ReportWords.date(facts.about().lastAt()),
                    "stations",
                    String.join(", ", statistics.stations())))));
    blocks.add(new Paragraph(words.yield("yield.first", first)));
    blocks.add(new Paragraph(words.yield("yield.final", last)));
    blocks.add(
        new Figure(
            new YieldDrawing(
                words.text("yield.first.name"), first, words.text("yield.final.name"), last),
            FigureHeight.LOW));
    blocks.add(new Note(first.method()));
    blocks.add(new Note(last.method()));
    statistics.notes().forEach(note -> blocks.add(new Note(note)));
    return new Section(
        words.text("title", Map.of("batch", statistics.batch(), "product", facts.productName())),
        false,
        blocks);
  }

  private Section reasons(Statistics statistics) {
    List<RankedReason> ranked = statistics.reasons();
    if (ranked.isEmpty()) {
      String none = statistics.units().failed() == 0 ? "reasons.none" : "reasons.unknown";
      return new Section(words.text("reasons"), false, List.of(new Paragraph(words.text(none))));
    }
    List<List<String>> rows = new ArrayList<>();
    for (RankedReason reason : ranked.subList(0, Math.min(MOST_REASONS, ranked.size()))) {
      rows.add(
          List.of(
              Integer.toString(rows.size() + 1),
              reason.text(),
              Integer.toString(reason.units()),
              ReportWords.percent(reason.share())));
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Table(
            List.of(
                new Column("", 4, true),
                new Column(words.text("reason"), 66, false),
                new Column(words.text("units"), 15, true),
                new Column(words.text("share"), 15, true)),
            rows));
    blocks.add(
        new Note(
            ranked.size() > MOST_REASONS
                ? words.text("reasons.more", Map.of("more", ranked.size() - MOST_REASONS))
                : words.text("reasons.several")));
    return new Section(words.text("reasons"), false, blocks);
  }

  private Section curves(Statistics statistics) {
    if (statistics.left().n() == 0) {
      return new Section(
          words.text("curves"), false, List.of(new Paragraph(words.text("curves.none"))));
    }
    return new Section(
        words.text("curves"),
        false,
        List.of(
            new Figure(new SpreadDrawing(statistics, words.ofSpread()), FigureHeight.TALL),
            new Note(
                words.text(
                    "curves.note",
                    Map.of("n", statistics.left().n(), "smoothing", statistics.smoothing())))));
  }

  private Section capability(Facts facts) {
    List<String> lacks =
        facts.capability().stream()
            .map(row -> row.missing() == null ? "" : row.missing().text())
            .distinct()
            .toList();
    if (lacks.size() == 1 && !lacks.get(0).isEmpty()) {
      return new Section(words.text("capability"), false, List.of(new Paragraph(lacks.get(0))));
    }
    List<List<String>> rows = new ArrayList<>();
    for (CapabilityRow row : facts.capability()) {
      rows.add(
          List.of(
              row.name(),
              Integer.toString(row.n()),
              ReportWords.limits(row.lowerLimitDb(), row.upperLimitDb()),
              row.missing() != null ? "" : ReportWords.db(row.meanDb()),
              row.missing() != null ? "" : ReportWords.plain(row.sdOverallDb()),
              index(row.cp()),
              index(row.cpk()),
              index(row.pp()),
              interval(row.ppk()),
              words.quoted(row)));
    }
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Table(
            List.of(
                new Column(words.text("quantity"), 24, false),
                new Column("n", 7, true),
                new Column(words.text("limits.db"), 16, true),
                new Column(words.text("mean"), 10, true),
                new Column(words.text("sd"), 9, true),
                new Column("Cp", 7, true),
                new Column("Cpk", 7, true),
                new Column("Pp", 7, true),
                new Column(words.text("ppk"), 19, true),
                new Column(words.text("quote"), 19, false)),
            rows));
    blocks.add(new Note(facts.capabilityMethod()));
    return new Section(words.text("capability"), false, blocks);
  }

  private static String index(Index index) {
    return index == null ? "" : ReportWords.index(index.value());
  }

  private static String interval(Index index) {
    return index == null
        ? ""
        : ReportWords.index(index.value())
            + " ("
            + ReportWords.index(index.interval()[0])
            + "–"
            + ReportWords.index(index.interval()[1])
            + ")";
  }

  private Section order(Facts facts) {
    List<Block> blocks = new ArrayList<>();
    chart(blocks, facts.failures(), FigureHeight.MIDDLE);
    facts.charts().forEach(chart -> chart(blocks, chart, FigureHeight.HIGH));
    blocks.add(new Note(words.text("order.note")));
    Components components = facts.components();
    if (components.missing() != null) {
      blocks.add(new Paragraph(words.text("t-squared") + ". " + components.missing().text()));
    } else {
      blocks.add(
          new Figure(new ScoresDrawing(words.text("t-squared"), components), FigureHeight.MIDDLE));
      blocks.add(new Paragraph(words.beyond(components)));
      components.components().stream()
          .limit(3)
          .forEach(
              component ->
                  blocks.add(
                      new Note(
                          words.text(
                              "component",
                              Map.of(
                                  "share",
                                  ReportWords.percent(component.share()),
                                  "text",
                                  component.text())))));
      blocks.add(new Note(components.method()));
    }
    return new Section(words.text("order"), false, blocks);
  }

  private void chart(List<Block> blocks, Charts chart, FigureHeight height) {
    if (chart.missing() != null) {
      blocks.add(new Paragraph(chart.name() + ". " + chart.missing().text()));
      return;
    }
    blocks.add(new Figure(new ControlDrawing(chart), height));
    blocks.add(new Paragraph(words.signals(chart)));
    blocks.add(new Note(chart.method()));
  }

  private Section stations(StationComparison comparison) {
    List<Block> blocks = new ArrayList<>();
    if (comparison.missing() != null) {
      blocks.add(new Paragraph(words.text("stations.one")));
      return new Section(words.text("stations"), false, blocks);
    }
    List<StationDifference> clear =
        comparison.rows().stream()
            .flatMap(row -> row.differences() == null ? null : row.differences().stream())
            .filter(StationDifference::clear)
            .toList();
    if (clear.isEmpty()) {
      blocks.add(new Paragraph(words.text("stations.alike")));
    }
    clear.forEach(difference -> blocks.add(new Paragraph(difference.text())));
    blocks.add(new Note(comparison.method()));
    return new Section(words.text("stations"), false, blocks);
  }

  private Section limits(ReportLimits limits) {
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Paragraph(
            words.text(
                "limits.about",
                Map.of(
                    "version", limits.set().version(),
                    "digest", limits.digest(),
                    "simulator", limits.set().earSimulator().label(),
                    "golden", limits.set().golden()))));
    blocks.add(
        new Table(
            List.of(
                new Column(words.text("region"), 20, false),
                new Column(words.text("span"), 26, false),
                new Column(words.text("window"), 34, true),
                new Column(words.text("match"), 20, true)),
            limits.regions(words)));
    blocks.add(new Paragraph(limits.level(words)));
    blocks.add(
        new Table(
            List.of(
                new Column(words.text("version"), 9, false),
                new Column(words.text("approved-at"), 17, false),
                new Column(words.text("approved-by"), 18, false),
                new Column(words.text("why"), 23, false),
                new Column(words.text("active-from"), 17, false),
                new Column(words.text("digest"), 16, false)),
            limits.history(words)));
    return new Section(words.text("limits"), true, blocks);
  }
}
