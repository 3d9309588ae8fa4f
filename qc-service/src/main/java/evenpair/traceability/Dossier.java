package evenpair.traceability;

import evenpair.certificates.JudgedPlot;
import evenpair.inspections.Inspections.AttemptSummary;
import evenpair.inspections.Inspections.Inspection;
import evenpair.inspections.Inspections.RegionView;
import evenpair.ledger.Ledger.Seal;
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
import evenpair.print.ResponseDrawing;
import evenpair.products.Products.VersionFacts;
import evenpair.stations.Stations;
import evenpair.stations.UncertaintyBudget.Scalar;
import evenpair.tolerance.Channel;
import evenpair.tolerance.Region;
import evenpair.tolerance.Span;
import evenpair.traceability.outside.RegionComparison;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;

/**
 * Lays out a dossier of three to five pages: the question, the answer in two sentences, the plots,
 * the tables, how it was measured and how sure that is, the limit's history, the record codes. No
 * verdict on whoever measured outside.
 */
final class Dossier {
  private static final int DIGEST_SHOWN = 16;

  private final DossierWords words;

  Dossier(DossierWords words) {
    this.words = words;
  }

  FlowDocument of(DossierFacts facts, PaperSize paper) {
    Inspection inspection = facts.inspection();
    List<Section> sections = new ArrayList<>();
    sections.add(question(facts));
    facts.report().ifPresent(report -> sections.add(comparison(report)));
    sections.add(record(facts));
    sections.add(margins(facts));
    sections.add(howMeasured(facts));
    sections.add(howSure(facts));
    sections.add(history(facts));
    sections.add(codes(facts));
    String title =
        words.text(
            "title", Map.of("serial", inspection.serial(), "product", inspection.productName()));
    return new FlowDocument(
        paper,
        words.locale(),
        title,
        facts.report().map(OutsideReport::receivedAt).orElse(dated(inspection)),
        inspection.maker(),
        words.text(
            facts.hidden() ? "header.public" : "header", Map.of("serial", inspection.serial())),
        words.text("footer", Map.of("software", facts.software())),
        sections);
  }

  private static Instant dated(Inspection inspection) {
    return inspection.closedAt() == null ? inspection.startedAt() : inspection.closedAt();
  }

  private Section question(DossierFacts facts) {
    Inspection inspection = facts.inspection();
    List<Block> blocks = new ArrayList<>();
    if (facts.report().isEmpty()) {
      blocks.add(
          new Paragraph(words.text("question.record", Map.of("serial", inspection.serial()))));
    } else {
      OutsideReport report = facts.report().get();
      OutsideWords answer = new OutsideWords(words.texts(), words.locale(), report);
      blocks.add(new Paragraph(asked(facts, report)));
      blocks.add(new Paragraph(words.text("answer", Map.of("sentence", answer.headline()))));
      answer.conclusion().forEach(sentence -> blocks.add(new Paragraph(sentence)));
      answer.inTheBatch().ifPresent(sentence -> blocks.add(new Paragraph(sentence)));
      blocks.add(new Note(words.text("no-verdict")));
    }
    return new Section(
        words.text(
            "title", Map.of("serial", inspection.serial(), "product", inspection.productName())),
        false,
        blocks);
  }

  private String asked(DossierFacts facts, OutsideReport report) {
    String who = facts.published().orElse(words.text("somebody"));
    boolean dated = report.source() != null && report.source().publishedOn() != null;
    return dated
        ? words.text(
            "question.dated",
            Map.of(
                "who", who,
                "date", report.source().publishedOn().toString(),
                "serial", facts.inspection().serial()))
        : words.text("question", Map.of("who", who, "serial", facts.inspection().serial()));
  }

  private Section comparison(OutsideReport report) {
    List<Block> blocks = new ArrayList<>();
    OutsideWords answer = new OutsideWords(words.texts(), words.locale(), report);
    blocks.add(
        new Figure(
            new DifferenceDrawing(
                report,
                Map.of(
                    "axis", words.text("plot.axis"),
                    "ours", words.text("plot.ours"),
                    "theirs", words.text("plot.theirs"),
                    "limit", words.text("plot.limit"),
                    "band", words.text("plot.band"))),
            FigureHeight.HIGH));
    if (!report.comparison().regions().isEmpty()) {
      blocks.add(comparisonTable(report));
      blocks.add(
          new Note(
              words.text(
                  "comparison.method",
                  Map.of("coverage", DossierWords.plain(report.comparison().coverage(), 2)))));
    }
    answer
        .assumptions()
        .forEach(line -> blocks.add(new Note(words.text("assumed", Map.of("line", line)))));
    answer
        .questions()
        .forEach(line -> blocks.add(new Note(words.text("to-ask", Map.of("line", line)))));
    return new Section(words.text("comparison"), false, blocks);
  }

  private Table comparisonTable(OutsideReport report) {
    List<List<String>> rows = new ArrayList<>();
    for (RegionComparison region : report.comparison().regions()) {
      rows.add(
          List.of(
              region.region(),
              DossierWords.span(region.band().fromHz(), region.band().toHz()),
              DossierWords.db(region.theirsDb(), 2),
              DossierWords.plain(region.theirExpandedDb(), 2),
              DossierWords.db(region.oursDb(), 2),
              DossierWords.plain(region.ourExpandedDb(), 2),
              DossierWords.plain(region.limitDb(), 1),
              DossierWords.db(region.en(), 2),
              words.any("screen.outcome." + region.outcome())));
    }
    return new Table(
        List.of(
            new Column(words.text("region"), 14, false),
            new Column(words.text("compared"), 22, false),
            new Column(words.text("theirs"), 11, true),
            new Column("± U", 8, true),
            new Column(words.text("ours"), 11, true),
            new Column("± U", 8, true),
            new Column(words.text("limit"), 9, true),
            new Column("En", 8, true),
            new Column(words.text("outcome"), 15, false)),
        rows);
  }

  private Section record(DossierFacts facts) {
    Inspection inspection = facts.inspection();
    List<List<String>> rows = new ArrayList<>();
    fact(rows, "verdict", words.any("word." + inspection.verdict()));
    fact(rows, "tuning", inspection.tuning());
    fact(rows, "batch", inspection.batch());
    fact(rows, "occasion", words.any("word." + inspection.occasion()));
    fact(rows, "measured-at", DossierWords.time(inspection.startedAt()));
    fact(rows, "closed-at", DossierWords.time(inspection.closedAt()));
    fact(rows, "station", inspection.station());
    fact(rows, "simulator", inspection.earSimulator());
    if (!facts.hidden()) {
      fact(rows, "operator", facts.operator().orElse(words.text("erased")));
    }
    fact(rows, "seatings", Integer.toString(facts.seatings()));
    fact(
        rows,
        "limit-set",
        words.text(
            "limit-set.value",
            Map.of(
                "version", inspection.limitSetVersion(),
                "digest", facts.limits().digest().substring(0, DIGEST_SHOWN))));
    List<Block> blocks = new ArrayList<>();
    blocks.add(
        new Table(
            List.of(
                new Column(words.text("fact"), 30, false),
                new Column(words.text("value"), 70, false)),
            rows));
    blocks.add(
        new Figure(
            new ResponseDrawing(JudgedPlot.of(facts.curves()), this::plotWord), FigureHeight.TALL));
    blocks.add(new Note(words.text("record.plot")));
    return new Section(words.text("record"), true, blocks);
  }

  private String plotWord(String key) {
    return words.any("paper.plot." + key);
  }

  private void fact(List<List<String>> rows, String key, String value) {
    rows.add(List.of(words.text("fact." + key), value == null ? "–" : value));
  }

  private Section margins(DossierFacts facts) {
    List<List<String>> rows = new ArrayList<>();
    for (RegionView row : facts.inspection().regions()) {
      if (row.check().equals("match") || row.check().equals("balance")) {
        Double share =
            facts.report().map(report -> report.percentiles().get(row.name())).orElse(null);
        rows.add(
            Arrays.asList(
                row.name() == null ? words.text("whole") : row.name(),
                words.any("word." + row.check()),
                row.judged() ? DossierWords.db(row.measuredDb(), 2) : words.text("not-judged"),
                DossierWords.plain(row.limitDb() == null ? null : Math.abs(row.limitDb()), 2),
                DossierWords.db(row.marginDb(), 2),
                share == null ? "–" : DossierWords.plain(100 * share, 0) + " %"));
      }
    }
    return new Section(
        words.text("margins"),
        false,
        List.of(
            new Table(
                List.of(
                    new Column(words.text("region"), 22, false),
                    new Column(words.text("check"), 18, false),
                    new Column(words.text("measured"), 16, true),
                    new Column(words.text("limit"), 14, true),
                    new Column(words.text("margin"), 14, true),
                    new Column(words.text("percentile"), 18, true)),
                rows),
            new Note(words.text("margins.note"))));
  }

  private Section howMeasured(DossierFacts facts) {
    List<List<String>> rows = new ArrayList<>();
    for (Channel channel : Channel.values()) {
      Stations.Microphone microphone = facts.chain().microphones().get(channel);
      if (microphone != null) {
        rows.add(
            List.of(
                words.text(
                    "chain.microphone", Map.of("channel", words.any("word." + channel.word()))),
                microphone.earSimulator().label() + ", " + microphone.earSimulatorSerial(),
                DossierWords.time(microphone.at()),
                DossierWords.time(microphone.validUntil())));
      }
    }
    facts
        .chain()
        .output()
        .ifPresent(
            output ->
                rows.add(
                    List.of(
                        words.text("chain.output"),
                        DossierWords.plain(output.voltsPerFullScale(), 4) + " V",
                        DossierWords.time(output.at()),
                        DossierWords.time(output.validUntil()))));
    facts
        .chain()
        .correction()
        .ifPresent(
            correction ->
                rows.add(
                    List.of(
                        words.text("chain.correction"),
                        words.text("chain.version", Map.of("version", correction.version())),
                        DossierWords.time(correction.at()),
                        DossierWords.time(correction.validUntil()))));
    return new Section(
        words.text("how-measured"),
        false,
        List.of(
            new Paragraph(words.text("how-measured.method")),
            new Table(
                List.of(
                    new Column(words.text("chain"), 32, false),
                    new Column(words.text("chain.what"), 28, false),
                    new Column(words.text("chain.at"), 20, false),
                    new Column(words.text("chain.until"), 20, false)),
                rows),
            new Note(
                words.text(
                    "range",
                    Map.of(
                        "from", facts.curves().specifiedFromHz(),
                        "to", facts.curves().specifiedToHz(),
                        "simulator", facts.inspection().earSimulator())))));
  }

  private Section howSure(DossierFacts facts) {
    List<Block> blocks = new ArrayList<>();
    if (facts.budget().isEmpty()) {
      blocks.add(new Paragraph(words.text("how-sure.none")));
      return new Section(words.text("how-sure"), false, blocks);
    }
    List<List<String>> rows = new ArrayList<>();
    for (Region region : facts.limits().set().regions()) {
      Scalar u = facts.budget().get(region.name());
      if (u != null) {
        rows.add(
            List.of(
                region.name(),
                DossierWords.plain(u.repeat() / Math.sqrt(facts.seatings()), 2),
                DossierWords.plain(u.reproducibility(), 2),
                DossierWords.plain(u.correction(), 2),
                DossierWords.plain(2 * u.combined(facts.seatings()), 2)));
      }
    }
    blocks.add(
        new Table(
            List.of(
                new Column(words.text("region"), 28, false),
                new Column(words.text("u.repeat"), 18, true),
                new Column(words.text("u.reproducibility"), 18, true),
                new Column(words.text("u.correction"), 18, true),
                new Column(words.text("u.expanded"), 18, true)),
            rows));
    blocks.add(new Note(words.text("how-sure.note", Map.of("seatings", facts.seatings()))));
    return new Section(words.text("how-sure"), false, blocks);
  }

  private Section history(DossierFacts facts) {
    List<List<String>> rows = new ArrayList<>();
    for (VersionFacts version : facts.history()) {
      boolean judged = version.version() == facts.inspection().limitSetVersion();
      List<String> row = new ArrayList<>();
      row.add(version.version() + (judged ? " " + words.text("this-one") : ""));
      row.add(version.approvedAt().map(DossierWords::time).orElse(words.text("draft")));
      if (!facts.hidden()) {
        row.add(
            version.approver().isEmpty()
                ? words.text("from-file")
                : facts.approvers().getOrDefault(version.version(), words.text("erased")));
      }
      row.add(version.reason().orElse("–"));
      row.add(version.digest().substring(0, DIGEST_SHOWN));
      rows.add(row);
    }
    List<Column> columns = new ArrayList<>();
    columns.add(new Column(words.text("version"), 14, false));
    columns.add(new Column(words.text("approved"), 22, false));
    if (!facts.hidden()) {
      columns.add(new Column(words.text("approved-by"), 18, false));
    }
    columns.add(new Column(words.text("why"), 28, false));
    columns.add(new Column(words.text("digest"), 20, false));
    return new Section(
        words.text("history"),
        false,
        List.of(new Paragraph(limits(facts)), new Table(columns, rows)));
  }

  private String limits(DossierFacts facts) {
    List<String> parts = new ArrayList<>();
    for (Region region : facts.limits().set().regions()) {
      region
          .match()
          .ifPresent(
              match ->
                  parts.add(
                      region.name()
                          + " ("
                          + DossierWords.span(region.band().fromHz(), region.band().toHz())
                          + "): "
                          + match(match)));
    }
    return words.text("history.limits", Map.of("limits", String.join("; ", parts)));
  }

  private static String match(Span match) {
    String start = DossierWords.plain(match.start(), 1);
    String end = DossierWords.plain(match.end(), 1);
    return (start.equals(end) ? start : start + " … " + end) + " dB";
  }

  private Section codes(DossierFacts facts) {
    List<List<String>> rows = new ArrayList<>();
    facts.seal().ifPresent(seal -> seal(rows, words.text("code.verdict"), seal));
    facts.reportSeal().ifPresent(seal -> seal(rows, words.text("code.report"), seal));
    for (AttemptSummary attempt : facts.inspection().attempts()) {
      Map<String, Object> which = Map.of("number", attempt.number());
      rows.add(List.of(words.text("code.left", which), attempt.leftSha256()));
      rows.add(List.of(words.text("code.right", which), attempt.rightSha256()));
    }
    return new Section(
        words.text("codes"),
        false,
        List.of(
            new Table(
                List.of(
                    new Column(words.text("code.what"), 30, false),
                    new Column(words.text("code.value"), 70, false)),
                rows),
            new Note(words.text("codes.note"))));
  }

  private void seal(List<List<String>> rows, String what, Seal seal) {
    rows.add(
        List.of(
            what,
            words.text(
                "code.seal",
                Map.of("code", seal.code(), "block", seal.block(), "key", seal.keyId()))));
    rows.add(List.of(words.text("code.entry"), seal.entryDigest()));
  }
}
